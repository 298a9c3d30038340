-- The answers to creating requests that carried an Idempotency-Key, so that the same request sent again gets the same
-- answer and does nothing twice.
create schema http;

create table http.kept_answer (
    person varchar(60) not null,
    idempotency_key varchar(200) not null,
    -- SHA-256 of method, path and body
    request_hash bytea not null,
    asked_at timestamptz not null,
    -- null while the first request is being answered, and for ever if the portal was killed meanwhile
    status int,
    headers jsonb,
    body bytea,
    primary key (person, idempotency_key)
);
create index kept_answer_asked_at on http.kept_answer (asked_at);
