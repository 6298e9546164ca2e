-- What a step asks to be written down becomes a sheet of its kind; a relief bake is the first. Nothing of it is lost.
ALTER TABLE "route_steps" RENAME COLUMN "bake" TO "sheet";
UPDATE "route_steps" SET "sheet" = "sheet" || '{"kind": "bake"}' WHERE "sheet" IS NOT NULL;

ALTER TABLE "traveler_steps" RENAME COLUMN "bake" TO "sheet";
UPDATE "traveler_steps" SET "sheet" = "sheet" || '{"kind": "bake"}' WHERE "sheet" IS NOT NULL;
