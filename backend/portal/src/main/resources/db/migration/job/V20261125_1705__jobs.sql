create schema job;

-- Long work. The scheduler's own table says who runs it; this one says what was asked and what came of it.
create table job.job (
    id uuid primary key,
    kind varchar(40) not null,
    house varchar(16) not null references houserecord.house (id),
    title text not null,
    request text not null,
    asked_by text not null,
    asked_at timestamptz not null,
    state varchar(12) not null check (state in ('WAITING', 'RUNNING', 'DONE', 'FAILED', 'CANCELLED')),
    cancel_asked boolean not null default false,
    attempts int not null default 0,
    done_fraction double precision not null default 0 check (done_fraction between 0 and 1),
    step text not null default '',
    started_at timestamptz,
    ended_at timestamptz,
    failure text,
    result text,
    check ((state = 'DONE') = (result is not null)),
    check ((state = 'FAILED') = (failure is not null))
);
create index job_by_house on job.job (house, asked_at desc);
