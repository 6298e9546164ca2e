-- AlterTable
ALTER TABLE "part_alternates" ADD COLUMN     "effectivity" TEXT NOT NULL DEFAULT 'now',
ADD COLUMN     "from_date" DATE,
ADD COLUMN     "supersedes" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "two_way" BOOLEAN NOT NULL DEFAULT false;

-- CreateTable
CREATE TABLE "suspicions" (
    "id" UUID NOT NULL,
    "lot_id" UUID NOT NULL,
    "reason" TEXT NOT NULL,
    "reported_by" UUID NOT NULL,
    "reported_at" TIMESTAMPTZ(3) NOT NULL,
    "reported_to" TEXT NOT NULL DEFAULT '',
    "decision" TEXT,
    "basis" TEXT,
    "decided_by" UUID,
    "decided_at" TIMESTAMPTZ(3),

    CONSTRAINT "suspicions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "stock_signatures" (
    "id" UUID NOT NULL,
    "lot_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "meaning" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "content_hash" TEXT NOT NULL,
    "authorisation" JSONB,
    "person_id" UUID NOT NULL,
    "signed_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "stock_signatures_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "surrenders" (
    "id" UUID NOT NULL,
    "lot_id" UUID NOT NULL,
    "letter" TEXT NOT NULL,
    "dated" DATE NOT NULL,
    "given_by" TEXT NOT NULL,
    "recorded_by" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "surrenders_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "supplier_returns" (
    "id" UUID NOT NULL,
    "lot_id" UUID NOT NULL,
    "purchase_order_line_id" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "reference" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "replaced" BOOLEAN NOT NULL,
    "movement_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "supplier_returns_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "bin_counts" (
    "id" UUID NOT NULL,
    "bin" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "begun_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "ended_by" UUID,

    CONSTRAINT "bin_counts_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "lot_counts" (
    "id" UUID NOT NULL,
    "lot_id" UUID NOT NULL,
    "place_kind" TEXT NOT NULL,
    "place_ref" TEXT NOT NULL,
    "on_book" INTEGER NOT NULL,
    "counted" INTEGER NOT NULL,
    "tolerance" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "counted_by" UUID NOT NULL,
    "counted_at" TIMESTAMPTZ(3) NOT NULL,
    "lot_version" INTEGER NOT NULL,
    "decided_by" UUID,
    "decided_at" TIMESTAMPTZ(3),
    "note" TEXT NOT NULL DEFAULT '',
    "movement_id" UUID,

    CONSTRAINT "lot_counts_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "suspicions_lot_id_reported_at_idx" ON "suspicions"("lot_id", "reported_at");

-- CreateIndex
CREATE INDEX "stock_signatures_lot_id_signed_at_idx" ON "stock_signatures"("lot_id", "signed_at");

-- CreateIndex
CREATE INDEX "stock_signatures_entry_id_idx" ON "stock_signatures"("entry_id");

-- CreateIndex
CREATE INDEX "surrenders_lot_id_idx" ON "surrenders"("lot_id");

-- CreateIndex
CREATE INDEX "surrenders_entry_id_idx" ON "surrenders"("entry_id");

-- CreateIndex
CREATE INDEX "supplier_returns_lot_id_idx" ON "supplier_returns"("lot_id");

-- CreateIndex
CREATE INDEX "supplier_returns_purchase_order_line_id_idx" ON "supplier_returns"("purchase_order_line_id");

-- CreateIndex
CREATE INDEX "supplier_returns_entry_id_idx" ON "supplier_returns"("entry_id");

-- CreateIndex
CREATE INDEX "bin_counts_bin_begun_at_idx" ON "bin_counts"("bin", "begun_at");

-- CreateIndex
CREATE INDEX "lot_counts_lot_id_place_kind_place_ref_counted_at_idx" ON "lot_counts"("lot_id", "place_kind", "place_ref", "counted_at");

-- CreateIndex
CREATE INDEX "lot_counts_state_counted_at_idx" ON "lot_counts"("state", "counted_at");

-- AddForeignKey
ALTER TABLE "suspicions" ADD CONSTRAINT "suspicions_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "lots"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "stock_signatures" ADD CONSTRAINT "stock_signatures_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "lots"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "surrenders" ADD CONSTRAINT "surrenders_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "lots"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supplier_returns" ADD CONSTRAINT "supplier_returns_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "lots"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supplier_returns" ADD CONSTRAINT "supplier_returns_purchase_order_line_id_fkey" FOREIGN KEY ("purchase_order_line_id") REFERENCES "purchase_order_lines"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "lot_counts" ADD CONSTRAINT "lot_counts_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "lots"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- What is only added.
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "stock_signatures" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "stock_signatures" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "stock_signatures" FROM hubwright_server;
GRANT SELECT, DELETE ON "stock_signatures" TO hubwright_retention;
CREATE TRIGGER "only added" BEFORE UPDATE OR TRUNCATE ON "surrenders" EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "kept until purged" BEFORE DELETE ON "surrenders" WHEN (current_user <> 'hubwright_retention') EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "surrenders" FROM hubwright_server;
GRANT SELECT, DELETE ON "surrenders" TO hubwright_retention;
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "supplier_returns" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "supplier_returns" FROM hubwright_server;
GRANT SELECT ON "supplier_returns" TO hubwright_retention;

CREATE UNIQUE INDEX "a lot is under one suspicion" ON "suspicions" ("lot_id") WHERE "decision" IS NULL;
CREATE UNIQUE INDEX "a bin is counted by one person" ON "bin_counts" ("bin") WHERE "ended_at" IS NULL;
CREATE UNIQUE INDEX "a count of a lot waits once" ON "lot_counts" ("lot_id", "place_kind", "place_ref") WHERE "state" = 'waiting';
ALTER TABLE "suspicions" ADD CONSTRAINT "a suspicion is decided by somebody with a basis"
  CHECK (("decision" IS NULL) = ("basis" IS NULL) AND ("decision" IS NULL) = ("decided_by" IS NULL));
ALTER TABLE "supplier_returns" ADD CONSTRAINT "a return is at least one piece" CHECK ("quantity" > 0);
ALTER TABLE "lot_counts" ADD CONSTRAINT "a count is not below nothing" CHECK ("counted" >= 0);
ALTER TABLE "lot_counts" ADD CONSTRAINT "a count is decided by another person" CHECK ("decided_by" IS NULL OR "decided_by" <> "counted_by");
ALTER TABLE "part_alternates" ADD CONSTRAINT "a stand-in from a day has its day"
  CHECK (("effectivity" = 'from-date') = ("from_date" IS NOT NULL) AND "effectivity" IN ('now', 'from-date', 'until-used'));

ALTER TABLE "lots" DROP CONSTRAINT "a lot is in quarantine, accepted or rejected";
ALTER TABLE "lots" ADD CONSTRAINT "a lot is in quarantine, accepted, rejected or suspected"
  CHECK ("state" IN ('quarantine', 'accepted', 'rejected', 'suspected'));
