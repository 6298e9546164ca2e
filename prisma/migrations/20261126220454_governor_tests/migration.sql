-- CreateTable
CREATE TABLE "governor_programs" (
    "id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "application_id" UUID NOT NULL,
    "issue" INTEGER NOT NULL,
    "basis" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "issued_by" UUID NOT NULL,
    "issued_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "governor_programs_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "governor_runs" (
    "id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "step_id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "program_id" UUID NOT NULL,
    "bench_id" UUID NOT NULL,
    "oil" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'open',
    "reason" TEXT,
    "record" JSONB,
    "started_by" UUID NOT NULL,
    "started_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_by" UUID,
    "ended_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "governor_runs_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "governor_readings" (
    "id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "point" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "compared" TEXT NOT NULL,
    "pass" BOOLEAN NOT NULL,
    "oil_temperature" TEXT NOT NULL,
    "as_read" JSONB NOT NULL,
    "source" TEXT NOT NULL,
    "taken_by" UUID NOT NULL,
    "taken_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "governor_readings_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "governor_adjustments" (
    "id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "what" TEXT NOT NULL,
    "before" TEXT NOT NULL,
    "after" TEXT NOT NULL,
    "reopens" TEXT[],
    "made_by" UUID NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "governor_adjustments_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "bench_links" (
    "instrument_id" UUID NOT NULL,
    "host" TEXT NOT NULL,
    "port" INTEGER NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "bench_links_pkey" PRIMARY KEY ("instrument_id")
);

-- CreateIndex
CREATE INDEX "governor_programs_application_id_idx" ON "governor_programs"("application_id");

-- CreateIndex
CREATE INDEX "governor_programs_entry_id_idx" ON "governor_programs"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "governor_programs_revision_id_application_id_issue_key" ON "governor_programs"("revision_id", "application_id", "issue");

-- CreateIndex
CREATE UNIQUE INDEX "governor_runs_number_key" ON "governor_runs"("number");

-- CreateIndex
CREATE INDEX "governor_runs_step_id_idx" ON "governor_runs"("step_id");

-- CreateIndex
CREATE INDEX "governor_runs_work_order_id_idx" ON "governor_runs"("work_order_id");

-- CreateIndex
CREATE INDEX "governor_runs_program_id_idx" ON "governor_runs"("program_id");

-- CreateIndex
CREATE INDEX "governor_runs_bench_id_idx" ON "governor_runs"("bench_id");

-- CreateIndex
CREATE INDEX "governor_readings_entry_id_idx" ON "governor_readings"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "governor_readings_run_id_sequence_key" ON "governor_readings"("run_id", "sequence");

-- CreateIndex
CREATE INDEX "governor_adjustments_entry_id_idx" ON "governor_adjustments"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "governor_adjustments_run_id_sequence_key" ON "governor_adjustments"("run_id", "sequence");

-- AddForeignKey
ALTER TABLE "governor_programs" ADD CONSTRAINT "governor_programs_model_id_fkey" FOREIGN KEY ("model_id") REFERENCES "unit_models"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "governor_programs" ADD CONSTRAINT "governor_programs_revision_id_fkey" FOREIGN KEY ("revision_id") REFERENCES "manual_revisions"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "governor_programs" ADD CONSTRAINT "governor_programs_application_id_fkey" FOREIGN KEY ("application_id") REFERENCES "applications"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "governor_runs" ADD CONSTRAINT "governor_runs_program_id_fkey" FOREIGN KEY ("program_id") REFERENCES "governor_programs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "governor_runs" ADD CONSTRAINT "governor_runs_step_id_fkey" FOREIGN KEY ("step_id") REFERENCES "traveler_steps"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "governor_runs" ADD CONSTRAINT "governor_runs_work_order_id_fkey" FOREIGN KEY ("work_order_id") REFERENCES "work_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "governor_runs" ADD CONSTRAINT "governor_runs_bench_id_fkey" FOREIGN KEY ("bench_id") REFERENCES "instruments"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "governor_readings" ADD CONSTRAINT "governor_readings_run_id_fkey" FOREIGN KEY ("run_id") REFERENCES "governor_runs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "governor_adjustments" ADD CONSTRAINT "governor_adjustments_run_id_fkey" FOREIGN KEY ("run_id") REFERENCES "governor_runs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "bench_links" ADD CONSTRAINT "bench_links_instrument_id_fkey" FOREIGN KEY ("instrument_id") REFERENCES "instruments"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "governor_programs" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "governor_programs" FROM hubwright_server;
GRANT SELECT ON "governor_programs" TO hubwright_retention;

CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "governor_readings" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "governor_readings" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "governor_adjustments" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "governor_adjustments" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "governor_readings", "governor_adjustments" FROM hubwright_server;
GRANT SELECT, DELETE ON "governor_readings", "governor_adjustments", "governor_runs" TO hubwright_retention;

CREATE UNIQUE INDEX "a governor test has one open run" ON "governor_runs" ("step_id") WHERE "state" = 'open';
ALTER TABLE "governor_runs" ADD CONSTRAINT "a run that ended has its record"
  CHECK ("state" = 'open' OR ("ended_at" IS NOT NULL AND "record" IS NOT NULL));
ALTER TABLE "governor_readings" ADD CONSTRAINT "a reading comes by keyboard, file or instrument"
  CHECK ("source" IN ('keyboard', 'csv', 'instrument'));
