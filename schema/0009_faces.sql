-- How the cavities of a connector are arranged, so that a drawing can mark the two that matter. Left empty where they are numbered
-- in any other way than along the rows, from the top left of the face that view_face names.

ALTER TABLE tap ADD COLUMN cavity_rows INTEGER;             -- rows of its cavities
