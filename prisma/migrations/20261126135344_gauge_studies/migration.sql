-- CreateTable
CREATE TABLE "gauge_studies" (
    "id" UUID NOT NULL,
    "instrument_id" UUID NOT NULL,
    "title" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "tolerance" TEXT,
    "held_on" DATE NOT NULL,
    "cells" JSONB NOT NULL,
    "recorded_by" UUID NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "gauge_studies_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "gauge_studies_instrument_id_idx" ON "gauge_studies"("instrument_id");

-- CreateIndex
CREATE INDEX "gauge_studies_entry_id_idx" ON "gauge_studies"("entry_id");

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "gauge_studies" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "gauge_studies" FROM hubwright_server;
GRANT SELECT ON "gauge_studies" TO hubwright_retention;
