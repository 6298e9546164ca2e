-- CreateTable
CREATE TABLE "field_balance_specs" (
    "id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "source" TEXT NOT NULL,
    "data" JSONB NOT NULL,
    "entered_by" UUID NOT NULL,
    "entered_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "field_balance_specs_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "balance_hardware" (
    "id" UUID NOT NULL,
    "part_id" UUID NOT NULL,
    "mass" TEXT NOT NULL,
    "entered_by" UUID NOT NULL,
    "entered_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "balance_hardware_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "field_balances" (
    "id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'planned',
    "customer_id" UUID NOT NULL,
    "aircraft_id" UUID NOT NULL,
    "unit_id" UUID NOT NULL,
    "spec_id" UUID,
    "airport" TEXT NOT NULL,
    "planned_on" DATE NOT NULL,
    "reason" TEXT NOT NULL,
    "abandoned" TEXT,
    "planned_by" UUID NOT NULL,
    "planned_at" TIMESTAMPTZ(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "field_balances_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "field_signatures" (
    "id" UUID NOT NULL,
    "field_balance_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "meaning" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "content_hash" TEXT NOT NULL,
    "authorisation" JSONB NOT NULL,
    "instrument_id" UUID,
    "person_id" UUID NOT NULL,
    "signed_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "field_signatures_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "field_runs" (
    "id" UUID NOT NULL,
    "field_balance_id" UUID NOT NULL,
    "set_up_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "readings" JSONB NOT NULL,
    "trial" JSONB,
    "weights" JSONB NOT NULL,
    "supersedes_id" UUID,
    "reason" TEXT,
    "recorded_by" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "field_runs_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "field_weights" (
    "id" UUID NOT NULL,
    "field_balance_id" UUID NOT NULL,
    "place" TEXT NOT NULL,
    "lot_id" UUID NOT NULL,
    "pieces" INTEGER NOT NULL,
    "mass" TEXT NOT NULL,
    "movement_id" UUID NOT NULL,
    "reason" TEXT,
    "done_by" UUID NOT NULL,
    "done_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "field_weights_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "field_balance_specs_model_id_entered_at_idx" ON "field_balance_specs"("model_id", "entered_at");

-- CreateIndex
CREATE INDEX "field_balance_specs_entry_id_idx" ON "field_balance_specs"("entry_id");

-- CreateIndex
CREATE INDEX "balance_hardware_part_id_entered_at_idx" ON "balance_hardware"("part_id", "entered_at");

-- CreateIndex
CREATE INDEX "balance_hardware_entry_id_idx" ON "balance_hardware"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "field_balances_number_key" ON "field_balances"("number");

-- CreateIndex
CREATE INDEX "field_balances_state_idx" ON "field_balances"("state");

-- CreateIndex
CREATE INDEX "field_balances_unit_id_idx" ON "field_balances"("unit_id");

-- CreateIndex
CREATE INDEX "field_signatures_field_balance_id_signed_at_idx" ON "field_signatures"("field_balance_id", "signed_at");

-- CreateIndex
CREATE INDEX "field_signatures_instrument_id_idx" ON "field_signatures"("instrument_id");

-- CreateIndex
CREATE INDEX "field_signatures_entry_id_idx" ON "field_signatures"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "field_runs_supersedes_id_key" ON "field_runs"("supersedes_id");

-- CreateIndex
CREATE INDEX "field_runs_set_up_id_idx" ON "field_runs"("set_up_id");

-- CreateIndex
CREATE INDEX "field_runs_entry_id_idx" ON "field_runs"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "field_runs_field_balance_id_sequence_key" ON "field_runs"("field_balance_id", "sequence");

-- CreateIndex
CREATE INDEX "field_weights_field_balance_id_idx" ON "field_weights"("field_balance_id");

-- CreateIndex
CREATE INDEX "field_weights_lot_id_idx" ON "field_weights"("lot_id");

-- CreateIndex
CREATE INDEX "field_weights_entry_id_idx" ON "field_weights"("entry_id");

-- AddForeignKey
ALTER TABLE "field_balance_specs" ADD CONSTRAINT "field_balance_specs_model_id_fkey" FOREIGN KEY ("model_id") REFERENCES "unit_models"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "balance_hardware" ADD CONSTRAINT "balance_hardware_part_id_fkey" FOREIGN KEY ("part_id") REFERENCES "parts"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "field_balances" ADD CONSTRAINT "field_balances_customer_id_fkey" FOREIGN KEY ("customer_id") REFERENCES "customers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "field_balances" ADD CONSTRAINT "field_balances_aircraft_id_fkey" FOREIGN KEY ("aircraft_id") REFERENCES "aircraft"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "field_balances" ADD CONSTRAINT "field_balances_unit_id_fkey" FOREIGN KEY ("unit_id") REFERENCES "serialized_items"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "field_balances" ADD CONSTRAINT "field_balances_spec_id_fkey" FOREIGN KEY ("spec_id") REFERENCES "field_balance_specs"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "field_signatures" ADD CONSTRAINT "field_signatures_field_balance_id_fkey" FOREIGN KEY ("field_balance_id") REFERENCES "field_balances"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "field_signatures" ADD CONSTRAINT "field_signatures_instrument_id_fkey" FOREIGN KEY ("instrument_id") REFERENCES "instruments"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "field_runs" ADD CONSTRAINT "field_runs_field_balance_id_fkey" FOREIGN KEY ("field_balance_id") REFERENCES "field_balances"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "field_runs" ADD CONSTRAINT "field_runs_set_up_id_fkey" FOREIGN KEY ("set_up_id") REFERENCES "field_signatures"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "field_runs" ADD CONSTRAINT "field_runs_supersedes_id_fkey" FOREIGN KEY ("supersedes_id") REFERENCES "field_runs"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "field_weights" ADD CONSTRAINT "field_weights_field_balance_id_fkey" FOREIGN KEY ("field_balance_id") REFERENCES "field_balances"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "field_weights" ADD CONSTRAINT "field_weights_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "lots"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "field_balance_specs" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "field_balance_specs" FROM hubwright_server;
GRANT SELECT ON "field_balance_specs" TO hubwright_retention;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "balance_hardware" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "balance_hardware" FROM hubwright_server;
GRANT SELECT ON "balance_hardware" TO hubwright_retention;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "field_signatures" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "field_signatures" FROM hubwright_server;
GRANT SELECT ON "field_signatures" TO hubwright_retention;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "field_runs" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "field_runs" FROM hubwright_server;
GRANT SELECT ON "field_runs" TO hubwright_retention;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "field_weights" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "field_weights" FROM hubwright_server;
GRANT SELECT ON "field_weights" TO hubwright_retention;

CREATE UNIQUE INDEX "a propeller has one balance under way" ON "field_balances" ("unit_id") WHERE "state" NOT IN ('released', 'abandoned');
ALTER TABLE "field_weights" ADD CONSTRAINT "a weight is put on or taken off, never none" CHECK ("pieces" <> 0);
