-- AlterTable
ALTER TABLE "imported_tables" ADD COLUMN     "customer_id" UUID;

-- AlterTable
ALTER TABLE "staged_tables" ADD COLUMN     "customer_id" UUID;

-- AlterTable
ALTER TABLE "time_records" ADD COLUMN     "interval_id" UUID;

-- CreateTable
CREATE TABLE "remembered_headings" (
    "kind" TEXT NOT NULL,
    "owner" TEXT NOT NULL,
    "heading" TEXT NOT NULL,
    "field" TEXT NOT NULL,
    "remembered_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "remembered_headings_pkey" PRIMARY KEY ("kind","owner","heading")
);

-- CreateIndex
CREATE INDEX "imported_tables_customer_id_idx" ON "imported_tables"("customer_id");
