-- What an owner tells of the house, in the owner's words; the office answers it once.
create table aftercare.report (
    id uuid primary key,
    house varchar(16) not null references houserecord.house (id),
    what text not null,
    in_house text not null,
    photos uuid[] not null default '{}',
    slot_day date,
    slot_half text,
    preference text not null,
    reported_by_id uuid not null,
    reported_by text not null,
    reported_at timestamptz not null,
    answer_by date not null,
    answer text,
    answered_by text,
    answered_at timestamptz,
    visit uuid references aftercare.visit (id),
    check ((slot_day is null) = (slot_half is null)),
    check ((answer is null) = (answered_at is null))
);
create index report_order on aftercare.report (reported_at desc, id);
create index report_house on aftercare.report (house, reported_at desc);
