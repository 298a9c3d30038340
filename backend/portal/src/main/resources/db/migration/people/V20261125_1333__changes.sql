-- The numbers by which the feed of changes is read. A line of the trail is numbered only once it is committed, by one
-- reader at a time, so that no line can ever appear behind a cursor that a client already holds. The trail's own ids
-- cannot serve: of two acts at once, the one with the lower id may be committed last.
create table people.line_to_number (
    line_id bigint primary key references people.audit_line (id)
);
create table people.change (
    number bigint generated always as identity primary key,
    line_id bigint not null unique references people.audit_line (id)
);
insert into people.line_to_number (line_id) select id from people.audit_line;

create function people.queue_line() returns trigger language plpgsql as $$
begin
    insert into people.line_to_number (line_id) values (new.id);
    return null;
end $$;
create trigger audit_line_is_numbered after insert on people.audit_line
    for each row execute function people.queue_line();
