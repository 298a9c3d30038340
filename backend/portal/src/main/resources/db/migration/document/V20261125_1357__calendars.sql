create schema document;

-- One feed for a person. Only a hash of the secret is kept; a new secret makes the old address worthless.
create table document.calendar (
    account text primary key,
    secret_hash bytea not null unique,
    made_at timestamptz not null
);
