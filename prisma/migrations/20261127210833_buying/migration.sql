-- AlterTable
ALTER TABLE "purchase_order_lines" ADD COLUMN     "confirmed_on" DATE,
ADD COLUMN     "confirmed_quantity" INTEGER;

-- AlterTable
ALTER TABLE "purchase_orders" ADD COLUMN     "revision" INTEGER NOT NULL DEFAULT 1,
ADD COLUMN     "sent_at" TIMESTAMPTZ(3),
ADD COLUMN     "sent_revision" INTEGER;

-- AlterTable
ALTER TABLE "suppliers" ADD COLUMN     "least_order" TEXT NOT NULL DEFAULT '0';

-- CreateTable
CREATE TABLE "receiving_checklists" (
    "id" UUID NOT NULL,
    "part_class" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "items" JSONB NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "receiving_checklists_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "lot_receipts" (
    "id" UUID NOT NULL,
    "lot_id" UUID NOT NULL,
    "line_id" UUID,
    "supplier_id" UUID,
    "delivery_note" TEXT NOT NULL DEFAULT '',
    "checklist_id" UUID,
    "answers" JSONB NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "lot_receipts_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "part_offers" (
    "id" UUID NOT NULL,
    "part_id" UUID NOT NULL,
    "supplier_id" UUID NOT NULL,
    "preference" INTEGER NOT NULL,
    "pack_size" INTEGER NOT NULL,
    "minimum" INTEGER NOT NULL DEFAULT 1,
    "lead_time_days" INTEGER NOT NULL,
    "breaks" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "part_offers_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "buying_costs" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "per_order" TEXT NOT NULL,
    "keeping_rate" TEXT NOT NULL,
    "missing_piece" TEXT NOT NULL,
    "review_days" INTEGER NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "buying_costs_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "supplier_approvals" (
    "id" UUID NOT NULL,
    "supplier_id" UUID NOT NULL,
    "approved_until" DATE,
    "basis" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "supplier_approvals_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "supplier_exceptions" (
    "id" UUID NOT NULL,
    "supplier_id" UUID NOT NULL,
    "order_id" UUID,
    "reason" TEXT NOT NULL,
    "good_until" DATE NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "supplier_exceptions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "order_revisions" (
    "id" UUID NOT NULL,
    "order_id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "changes" TEXT[],
    "reason" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "order_revisions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "order_confirmations" (
    "id" UUID NOT NULL,
    "line_id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "quantity" INTEGER NOT NULL,
    "comes_on" DATE NOT NULL,
    "reference" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "order_confirmations_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "held_deliveries" (
    "id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "cause" TEXT NOT NULL,
    "supplier_id" UUID,
    "order_id" UUID,
    "what" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "delivery_note" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "held_at" TIMESTAMPTZ(3) NOT NULL,
    "held_by" UUID NOT NULL,
    "returned_on" DATE,
    "returned_by" UUID,
    "return_note" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "held_deliveries_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "receiving_checklists_entry_id_idx" ON "receiving_checklists"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "receiving_checklists_part_class_revision_key" ON "receiving_checklists"("part_class", "revision");

-- CreateIndex
CREATE UNIQUE INDEX "lot_receipts_lot_id_key" ON "lot_receipts"("lot_id");

-- CreateIndex
CREATE INDEX "lot_receipts_line_id_delivery_note_idx" ON "lot_receipts"("line_id", "delivery_note");

-- CreateIndex
CREATE INDEX "lot_receipts_entry_id_idx" ON "lot_receipts"("entry_id");

-- CreateIndex
CREATE INDEX "part_offers_supplier_id_idx" ON "part_offers"("supplier_id");

-- CreateIndex
CREATE UNIQUE INDEX "part_offers_part_id_supplier_id_key" ON "part_offers"("part_id", "supplier_id");

-- CreateIndex
CREATE INDEX "supplier_approvals_supplier_id_at_idx" ON "supplier_approvals"("supplier_id", "at");

-- CreateIndex
CREATE INDEX "supplier_approvals_entry_id_idx" ON "supplier_approvals"("entry_id");

-- CreateIndex
CREATE INDEX "supplier_exceptions_supplier_id_idx" ON "supplier_exceptions"("supplier_id");

-- CreateIndex
CREATE INDEX "supplier_exceptions_order_id_idx" ON "supplier_exceptions"("order_id");

-- CreateIndex
CREATE INDEX "supplier_exceptions_entry_id_idx" ON "supplier_exceptions"("entry_id");

-- CreateIndex
CREATE INDEX "order_revisions_entry_id_idx" ON "order_revisions"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "order_revisions_order_id_revision_key" ON "order_revisions"("order_id", "revision");

-- CreateIndex
CREATE INDEX "order_confirmations_line_id_at_idx" ON "order_confirmations"("line_id", "at");

-- CreateIndex
CREATE INDEX "order_confirmations_entry_id_idx" ON "order_confirmations"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "held_deliveries_number_key" ON "held_deliveries"("number");

-- CreateIndex
CREATE INDEX "held_deliveries_state_idx" ON "held_deliveries"("state");

-- CreateIndex
CREATE INDEX "held_deliveries_order_id_idx" ON "held_deliveries"("order_id");

-- CreateIndex
CREATE INDEX "held_deliveries_supplier_id_idx" ON "held_deliveries"("supplier_id");

-- AddForeignKey
ALTER TABLE "lot_receipts" ADD CONSTRAINT "lot_receipts_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "lots"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "lot_receipts" ADD CONSTRAINT "lot_receipts_line_id_fkey" FOREIGN KEY ("line_id") REFERENCES "purchase_order_lines"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "lot_receipts" ADD CONSTRAINT "lot_receipts_checklist_id_fkey" FOREIGN KEY ("checklist_id") REFERENCES "receiving_checklists"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_offers" ADD CONSTRAINT "part_offers_part_id_fkey" FOREIGN KEY ("part_id") REFERENCES "parts"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_offers" ADD CONSTRAINT "part_offers_supplier_id_fkey" FOREIGN KEY ("supplier_id") REFERENCES "suppliers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supplier_approvals" ADD CONSTRAINT "supplier_approvals_supplier_id_fkey" FOREIGN KEY ("supplier_id") REFERENCES "suppliers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supplier_exceptions" ADD CONSTRAINT "supplier_exceptions_supplier_id_fkey" FOREIGN KEY ("supplier_id") REFERENCES "suppliers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supplier_exceptions" ADD CONSTRAINT "supplier_exceptions_order_id_fkey" FOREIGN KEY ("order_id") REFERENCES "purchase_orders"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "order_revisions" ADD CONSTRAINT "order_revisions_order_id_fkey" FOREIGN KEY ("order_id") REFERENCES "purchase_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "order_confirmations" ADD CONSTRAINT "order_confirmations_line_id_fkey" FOREIGN KEY ("line_id") REFERENCES "purchase_order_lines"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "held_deliveries" ADD CONSTRAINT "held_deliveries_supplier_id_fkey" FOREIGN KEY ("supplier_id") REFERENCES "suppliers"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "held_deliveries" ADD CONSTRAINT "held_deliveries_order_id_fkey" FOREIGN KEY ("order_id") REFERENCES "purchase_orders"("id") ON DELETE SET NULL ON UPDATE CASCADE;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "supplier_approvals" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "supplier_approvals" FROM hubwright_server;
GRANT SELECT ON "supplier_approvals" TO hubwright_retention;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "supplier_exceptions" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "supplier_exceptions" FROM hubwright_server;
GRANT SELECT ON "supplier_exceptions" TO hubwright_retention;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "order_revisions" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "order_revisions" FROM hubwright_server;
GRANT SELECT ON "order_revisions" TO hubwright_retention;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "order_confirmations" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "order_confirmations" FROM hubwright_server;
GRANT SELECT ON "order_confirmations" TO hubwright_retention;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "receiving_checklists" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "receiving_checklists" FROM hubwright_server;
GRANT SELECT ON "receiving_checklists" TO hubwright_retention;

CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "lot_receipts" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "lot_receipts" FROM hubwright_server;
GRANT SELECT ON "lot_receipts" TO hubwright_retention;

ALTER TABLE "part_offers" ADD CONSTRAINT "a pack and a least order hold at least one piece"
  CHECK ("pack_size" >= 1 AND "minimum" >= 1 AND "lead_time_days" >= 0);
ALTER TABLE "purchase_order_lines" ADD CONSTRAINT "a confirmed line has a day and a number"
  CHECK (("confirmed_on" IS NULL) = ("confirmed_quantity" IS NULL) AND coalesce("confirmed_quantity", 0) >= 0);
ALTER TABLE "held_deliveries" ADD CONSTRAINT "a held delivery that went back has a day and a sender"
  CHECK (("state" = 'returned') = ("returned_on" IS NOT NULL) AND ("returned_on" IS NULL) = ("returned_by" IS NULL));
ALTER TABLE "held_deliveries" ADD CONSTRAINT "a held delivery is at least one piece" CHECK ("quantity" >= 1);
ALTER TABLE "buying_costs" ADD CONSTRAINT "there is one row of buying costs" CHECK ("id" = 1);
