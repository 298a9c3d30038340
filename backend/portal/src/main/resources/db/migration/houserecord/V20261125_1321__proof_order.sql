-- json keeps the order of names, jsonb does not: inputs and results are shown in the order of the calculation
alter table houserecord.proof_issue alter column content type json using content::json;
