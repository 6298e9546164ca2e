-- The signed records of a balance on the aircraft are kept as long as a work order's, and then go by the same proof.
DROP TRIGGER "only added" ON "field_signatures";
DROP TRIGGER "only added" ON "field_runs";
DROP TRIGGER "only added" ON "field_weights";
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "field_signatures" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "field_signatures" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "field_runs" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "field_runs" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "field_weights" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "field_weights" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
GRANT DELETE ON "field_signatures", "field_runs", "field_weights" TO hubwright_retention;
-- Readings go together with the ones they put right; setting the name of the other to nothing would be a change.
ALTER TABLE "field_runs" DROP CONSTRAINT "field_runs_supersedes_id_fkey";
ALTER TABLE "field_runs" ADD CONSTRAINT "field_runs_supersedes_id_fkey" FOREIGN KEY ("supersedes_id") REFERENCES "field_runs"("id") ON DELETE NO ACTION ON UPDATE CASCADE;
