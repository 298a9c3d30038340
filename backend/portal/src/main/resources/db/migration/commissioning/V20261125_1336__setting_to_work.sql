create schema commissioning;

-- What was measured, as it was sent, and what it showed against the design of that day.
create table commissioning.measurement (
    id uuid primary key,
    house_id varchar(16) not null references houserecord.house (id),
    sheet text not null,
    occasion text not null,
    taken_at timestamptz not null,
    received_at timestamptz not null,
    person_id uuid not null,
    person text not null,
    sent jsonb not null,
    outcome jsonb not null
);
create index measurement_house on commissioning.measurement (house_id, sheet, taken_at);

create table commissioning.measurement_signature (
    measurement_id uuid primary key references commissioning.measurement (id),
    role text not null,
    person_id uuid not null,
    person text not null,
    reason text not null,
    at timestamptz not null
);

-- a measured value can never be rewritten, not even by a fault in the portal
create function commissioning.refuse_rewriting() returns trigger language plpgsql as $$
begin
    raise exception '% is append-only', tg_table_name;
end $$;
create trigger append_only before update or delete on commissioning.measurement
    for each row execute function commissioning.refuse_rewriting();
create trigger append_only before update or delete on commissioning.measurement_signature
    for each row execute function commissioning.refuse_rewriting();
