-- +goose Up

-- A farm is one log. Its version counts what has changed in the log, in commit
-- order, because whoever changes it holds the farm's row.
CREATE TABLE farm (
    id             bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    name           text        NOT NULL,
    zone           text        NOT NULL, -- IANA
    version        bigint      NOT NULL DEFAULT 0,
    summary_minute int         CHECK (summary_minute BETWEEN 0 AND 1439), -- of the local day; null: no summary
    summary_from   date,       -- the first local day with a summary
    made_at        timestamptz NOT NULL DEFAULT now()
);

-- A chat belongs to one farm, or to none yet. out_seq numbers what is sent to it.
CREATE TABLE chat (
    id       bigint PRIMARY KEY, -- Telegram's
    farm     bigint REFERENCES farm,
    private  boolean NOT NULL DEFAULT false,
    title    text    NOT NULL DEFAULT '',
    topic    int     NOT NULL DEFAULT 0, -- where the summary goes
    moved_to bigint  REFERENCES chat,    -- the supergroup that it became
    gone     boolean NOT NULL DEFAULT false, -- the bot was removed
    out_seq  bigint  NOT NULL DEFAULT 0
);
CREATE INDEX chat_farm ON chat (farm);

-- A person on a farm.
CREATE TABLE member (
    farm    bigint  NOT NULL REFERENCES farm,
    person  bigint  NOT NULL, -- Telegram's user id
    name    text    NOT NULL,
    manager boolean NOT NULL DEFAULT false,
    PRIMARY KEY (farm, person)
);
CREATE INDEX member_person ON member (person);

-- What came in, as it came in. The digest is of the update's content: a number
-- that comes back with other content is another update.
CREATE TABLE inbox (
    id          bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    update_id   bigint, -- null where the update has none
    digest      bytea       NOT NULL,
    chat        bigint, -- null where the update has none
    raw         bytea       NOT NULL,
    received_at timestamptz NOT NULL,
    state       text        NOT NULL DEFAULT 'new' CHECK (state IN ('new', 'done', 'failed')),
    attempts    int         NOT NULL DEFAULT 0,
    next_try    timestamptz NOT NULL DEFAULT '-infinity',
    error       text        NOT NULL DEFAULT '',
    done_at     timestamptz
);
CREATE UNIQUE INDEX inbox_once ON inbox (COALESCE(update_id, -1), digest);
CREATE INDEX inbox_new ON inbox (id) WHERE state = 'new';
CREATE INDEX inbox_chat_new ON inbox (chat, id) WHERE state = 'new';

-- A message that the bot has read. Its number is the farm's own; a chat and
-- Telegram's number make it unique.
CREATE TABLE message (
    id         bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    chat       bigint      NOT NULL REFERENCES chat,
    message_id int         NOT NULL,
    farm       bigint      REFERENCES farm,
    person     bigint      NOT NULL,
    sent_at    timestamptz NOT NULL,
    text       text        NOT NULL,
    topic      int         NOT NULL DEFAULT 0,
    reply_to   int         NOT NULL DEFAULT 0,
    revision   int         NOT NULL DEFAULT 0,
    state      text        NOT NULL DEFAULT '',
    UNIQUE (chat, message_id)
);
CREATE INDEX message_recent ON message (farm, person, sent_at);

-- What a message said before and after each edit; revision 0 is as first sent.
CREATE TABLE revision (
    message  bigint      NOT NULL REFERENCES message,
    revision int         NOT NULL,
    text     text        NOT NULL,
    at       timestamptz NOT NULL,
    PRIMARY KEY (message, revision)
);

-- The farm's log. Nothing is deleted; what was mended points to what mended
-- it. version is the farm's version at the row's last change.
CREATE TABLE entry (
    id          bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    farm        bigint      NOT NULL REFERENCES farm,
    version     bigint      NOT NULL,
    person      bigint      NOT NULL,
    manager     boolean     NOT NULL,
    sent_at     timestamptz NOT NULL,
    message     bigint      NOT NULL REFERENCES message,
    revision    int         NOT NULL,
    ordinal     int         NOT NULL,
    kind        text        NOT NULL,
    body        jsonb       NOT NULL,
    replaced_by bigint      REFERENCES entry,
    FOREIGN KEY (farm, person) REFERENCES member,
    UNIQUE (message, revision, ordinal)
);
CREATE INDEX entry_farm ON entry (farm, version);

-- What is to be sent, in the order of its chat. key says what it answers: the
-- same key twice is one row.
CREATE TABLE outbox (
    id       bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    key      text        NOT NULL UNIQUE,
    chat     bigint      NOT NULL REFERENCES chat,
    seq      bigint      NOT NULL,
    payload  json        NOT NULL,
    message  bigint      REFERENCES message, -- the message that it answers
    edits    bigint      REFERENCES outbox,  -- the row whose message it edits
    job      bigint,
    until    timestamptz, -- not to be sent after this
    moved    boolean     NOT NULL DEFAULT false, -- the chat changed under it
    state    text        NOT NULL DEFAULT 'pending' CHECK (state IN ('pending', 'sent', 'failed', 'late')),
    attempts int         NOT NULL DEFAULT 0,
    next_try timestamptz NOT NULL DEFAULT '-infinity',
    error    text        NOT NULL DEFAULT '',
    sent_id  int         NOT NULL DEFAULT 0, -- Telegram's number of the sent message
    sent_at  timestamptz,
    UNIQUE (chat, seq)
);
CREATE INDEX outbox_pending ON outbox (chat, seq) WHERE state = 'pending';
CREATE INDEX outbox_message ON outbox (message);
CREATE INDEX outbox_sent ON outbox (chat, sent_id) WHERE sent_id <> 0;
CREATE INDEX outbox_sent_at ON outbox (sent_at);

-- A question that the bot asked about a message, before anything is logged.
CREATE TABLE ask (
    id         bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    farm       bigint      REFERENCES farm,
    chat       bigint      NOT NULL REFERENCES chat,
    message    bigint      NOT NULL REFERENCES message,
    revision   int         NOT NULL,
    person     bigint      NOT NULL,
    body       jsonb       NOT NULL, -- reason and options
    asked_at   timestamptz NOT NULL,
    state      text        NOT NULL DEFAULT 'open' CHECK (state IN ('open', 'settled', 'lapsed')),
    choice     int,        -- which option, from 0; null for none of them
    settled_by bigint,
    settled_at timestamptz,
    outbox     bigint      REFERENCES outbox, -- where it was asked
    UNIQUE (message, revision)
);
CREATE INDEX ask_open ON ask (chat) WHERE state = 'open';

-- What runs once a farm and local day.
CREATE TABLE job (
    id     bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    farm   bigint      NOT NULL REFERENCES farm,
    kind   text        NOT NULL,
    day    date        NOT NULL,
    state  text        NOT NULL CHECK (state IN ('done', 'skipped')),
    reason text        NOT NULL DEFAULT '',
    at     timestamptz NOT NULL,
    UNIQUE (farm, kind, day)
);
ALTER TABLE outbox ADD FOREIGN KEY (job) REFERENCES job;

-- What the bot remembers about a farm beside the log, by name.
CREATE TABLE keep (
    farm  bigint NOT NULL REFERENCES farm,
    key   text   NOT NULL,
    value jsonb  NOT NULL,
    PRIMARY KEY (farm, key)
);

-- +goose Down
DROP TABLE keep, ask, outbox, job, entry, revision, message, inbox, member, chat, farm;
