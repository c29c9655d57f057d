-- Why: a service item says by what it is measured (null: by nothing), from version 2 of its entries on; what stands is a replay of the journal.
-- Existing rows: every service item that stands gets "measure":null, in its place in the order of canonical JSON, just before "minutes".
-- The journal is not touched: its rows of version 1 are read through an upgrade. Quotation marks inside a text are written \" in
-- JSON, so what is searched for occurs only as the name of the field, which every service item has once.
UPDATE fact SET value = replace(value, ',"minutes":', ',"measure":null,"minutes":')
WHERE family = 'service-item';
