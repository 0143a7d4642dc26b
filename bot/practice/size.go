package practice

import "fmt"

// size words a file's size, in thousands of bytes.
func size(bytes int) string {
	switch {
	case bytes < 1000:
		return fmt.Sprintf("%d bytes", bytes)
	case bytes < 1000*1000:
		return fmt.Sprintf("%.0f kB", float64(bytes)/1000)
	}
	return fmt.Sprintf("%.1f MB", float64(bytes)/1e6)
}

// Sized words the file's size.
func (f File) Sized() string { return size(f.Size) }
