-- CreateTable
CREATE TABLE "aircraft_moves" (
    "id" UUID NOT NULL,
    "aircraft_id" UUID NOT NULL,
    "from_customer_id" UUID NOT NULL,
    "to_customer_id" UUID NOT NULL,
    "moved_on" DATE NOT NULL,
    "basis" TEXT NOT NULL,
    "recorded_by" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "aircraft_moves_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "aircraft_moves_aircraft_id_idx" ON "aircraft_moves"("aircraft_id");

-- CreateIndex
CREATE INDEX "aircraft_moves_from_customer_id_idx" ON "aircraft_moves"("from_customer_id");

-- CreateIndex
CREATE INDEX "aircraft_moves_to_customer_id_idx" ON "aircraft_moves"("to_customer_id");

-- AddForeignKey
ALTER TABLE "aircraft_moves" ADD CONSTRAINT "aircraft_moves_aircraft_id_fkey" FOREIGN KEY ("aircraft_id") REFERENCES "aircraft"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "aircraft_moves" ADD CONSTRAINT "aircraft_moves_from_customer_id_fkey" FOREIGN KEY ("from_customer_id") REFERENCES "customers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "aircraft_moves" ADD CONSTRAINT "aircraft_moves_to_customer_id_fkey" FOREIGN KEY ("to_customer_id") REFERENCES "customers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Only added.
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "aircraft_moves" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "aircraft_moves" FROM hubwright_server;
GRANT SELECT ON "aircraft_moves" TO hubwright_retention;
