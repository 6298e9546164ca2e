-- AlterTable
ALTER TABLE "route_steps" ADD COLUMN     "peening" JSONB;

-- AlterTable
ALTER TABLE "traveler_steps" ADD COLUMN     "peening" JSONB;

-- CreateTable
CREATE TABLE "peening_machines" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "in_service" BOOLEAN NOT NULL DEFAULT true,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "peening_machines_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "peening_setups" (
    "id" UUID NOT NULL,
    "machine_id" UUID NOT NULL,
    "program" TEXT NOT NULL,
    "parameters" JSONB NOT NULL,
    "media_size" TEXT NOT NULL,
    "media_lot" TEXT NOT NULL,
    "areas" JSONB NOT NULL,
    "qualified_by" UUID NOT NULL,
    "qualified_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "peening_setups_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "peening_lots" (
    "id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "setup_id" UUID NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'open',
    "areas" JSONB NOT NULL,
    "opening" JSONB NOT NULL,
    "closing" JSONB,
    "coverage" JSONB,
    "reasons" TEXT[],
    "decision" TEXT,
    "started_by" UUID NOT NULL,
    "started_at" TIMESTAMPTZ(3) NOT NULL,
    "closed_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "peening_lots_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "peening_parts" (
    "id" UUID NOT NULL,
    "lot_id" UUID NOT NULL,
    "step_id" UUID NOT NULL,
    "open" BOOLEAN NOT NULL DEFAULT true,

    CONSTRAINT "peening_parts_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "peening_machines_code_key" ON "peening_machines"("code");

-- CreateIndex
CREATE INDEX "peening_setups_machine_id_program_qualified_at_idx" ON "peening_setups"("machine_id", "program", "qualified_at");

-- CreateIndex
CREATE INDEX "peening_setups_entry_id_idx" ON "peening_setups"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "peening_lots_number_key" ON "peening_lots"("number");

-- CreateIndex
CREATE INDEX "peening_lots_state_idx" ON "peening_lots"("state");

-- CreateIndex
CREATE INDEX "peening_lots_setup_id_idx" ON "peening_lots"("setup_id");

-- CreateIndex
CREATE INDEX "peening_parts_step_id_idx" ON "peening_parts"("step_id");

-- CreateIndex
CREATE UNIQUE INDEX "peening_parts_lot_id_step_id_key" ON "peening_parts"("lot_id", "step_id");

-- AddForeignKey
ALTER TABLE "peening_setups" ADD CONSTRAINT "peening_setups_machine_id_fkey" FOREIGN KEY ("machine_id") REFERENCES "peening_machines"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "peening_lots" ADD CONSTRAINT "peening_lots_setup_id_fkey" FOREIGN KEY ("setup_id") REFERENCES "peening_setups"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "peening_parts" ADD CONSTRAINT "peening_parts_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "peening_lots"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "peening_parts" ADD CONSTRAINT "peening_parts_step_id_fkey" FOREIGN KEY ("step_id") REFERENCES "traveler_steps"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "peening_setups" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "peening_setups" FROM hubwright_server;
GRANT SELECT ON "peening_setups" TO hubwright_retention;
CREATE UNIQUE INDEX "a part is in one open peening lot" ON "peening_parts" ("step_id") WHERE "open";
