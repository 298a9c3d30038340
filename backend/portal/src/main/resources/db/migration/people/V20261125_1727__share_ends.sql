-- The last day on which a role is held; null: until it is taken back.
alter table people.held_role add column ends_on date;
