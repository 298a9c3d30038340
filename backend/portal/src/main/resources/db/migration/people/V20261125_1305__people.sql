-- Who may sign in, as what, for which house; tokens for machines; the trail of acts; signed-in sessions.
create schema people;

create table people.account (
    id uuid primary key,
    account varchar(60) not null unique check (account = lower(account)),
    display_name varchar(120) not null,
    -- null: nobody can sign in with it
    password_hash varchar(200),
    active boolean not null default true,
    units varchar(2) not null default 'IP' check (units in ('SI', 'IP')),
    created_at timestamptz not null
);

-- the portal itself, for the demo and for jobs
insert into people.account (id, account, display_name, password_hash, created_at)
values ('00000000-0000-0000-0000-000000000000', 'portal', 'Oakum', null, now());

create table people.held_role (
    account_id uuid not null references people.account (id),
    role varchar(30) not null,
    -- null: for the whole firm
    house_id varchar(16),
    -- owners and consultants see the houses that were shared with them, never the whole firm
    check (house_id is not null or role not in ('OWNER', 'CONSULTANT')),
    unique nulls not distinct (account_id, role, house_id)
);
create index held_role_house on people.held_role (house_id);

create table people.token (
    id uuid primary key,
    account_id uuid not null references people.account (id),
    label varchar(120) not null,
    -- SHA-256 of 32 random bytes: no slow hash is needed for a secret that nobody can guess
    secret_hash bytea not null unique,
    created_at timestamptz not null,
    expires_at timestamptz not null,
    revoked_at timestamptz,
    last_used_at timestamptz
);
create index token_account on people.token (account_id);
-- no row: every house of the person
create table people.token_house (
    token_id uuid not null references people.token (id),
    house_id varchar(16) not null,
    primary key (token_id, house_id)
);
create table people.token_permission (
    token_id uuid not null references people.token (id),
    permission varchar(40) not null,
    primary key (token_id, permission)
);

create table people.audit_line (
    id bigint generated always as identity primary key,
    at timestamptz not null,
    account_id uuid not null references people.account (id),
    token_id uuid references people.token (id),
    act varchar(60) not null,
    house_id varchar(16),
    sentence text not null,
    resource text
);
create index audit_line_house on people.audit_line (house_id, id);

create function people.refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'the audit trail is only ever added to';
end $$;
create trigger audit_line_only_grows before update or delete or truncate on people.audit_line
    for each statement execute function people.refuse_change();

-- as the session library wants them
create table people.spring_session (
    primary_id char(36) not null primary key,
    session_id char(36) not null unique,
    creation_time bigint not null,
    last_access_time bigint not null,
    max_inactive_interval int not null,
    expiry_time bigint not null,
    principal_name varchar(100)
);
create index spring_session_expiry on people.spring_session (expiry_time);
create index spring_session_principal on people.spring_session (principal_name);
create table people.spring_session_attributes (
    session_primary_id char(36) not null references people.spring_session (primary_id) on delete cascade,
    attribute_name varchar(200) not null,
    attribute_bytes bytea not null,
    primary key (session_primary_id, attribute_name)
);
