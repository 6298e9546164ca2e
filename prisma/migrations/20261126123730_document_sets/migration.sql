-- CreateTable
CREATE TABLE "documents" (
    "id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "issuer" TEXT NOT NULL,
    "withdrawn_on" DATE,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "documents_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "document_models" (
    "document_id" UUID NOT NULL,
    "model_id" UUID NOT NULL,

    CONSTRAINT "document_models_pkey" PRIMARY KEY ("document_id","model_id")
);

-- CreateTable
CREATE TABLE "document_issues" (
    "id" UUID NOT NULL,
    "document_id" UUID NOT NULL,
    "issue" TEXT NOT NULL,
    "issued_on" DATE NOT NULL,
    "state" TEXT NOT NULL,
    "summary" TEXT NOT NULL,
    "currency_checked_by" UUID,
    "currency_checked_on" DATE,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "document_issues_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "work_order_documents" (
    "work_order_id" UUID NOT NULL,
    "issue_id" UUID NOT NULL,

    CONSTRAINT "work_order_documents_pkey" PRIMARY KEY ("work_order_id","issue_id")
);

-- CreateIndex
CREATE UNIQUE INDEX "documents_kind_number_key" ON "documents"("kind", "number");

-- CreateIndex
CREATE INDEX "document_models_model_id_idx" ON "document_models"("model_id");

-- CreateIndex
CREATE UNIQUE INDEX "document_issues_document_id_issue_key" ON "document_issues"("document_id", "issue");

-- CreateIndex
CREATE INDEX "work_order_documents_issue_id_idx" ON "work_order_documents"("issue_id");

-- AddForeignKey
ALTER TABLE "document_models" ADD CONSTRAINT "document_models_document_id_fkey" FOREIGN KEY ("document_id") REFERENCES "documents"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "document_models" ADD CONSTRAINT "document_models_model_id_fkey" FOREIGN KEY ("model_id") REFERENCES "unit_models"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "document_issues" ADD CONSTRAINT "document_issues_document_id_fkey" FOREIGN KEY ("document_id") REFERENCES "documents"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "work_order_documents" ADD CONSTRAINT "work_order_documents_work_order_id_fkey" FOREIGN KEY ("work_order_id") REFERENCES "work_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "work_order_documents" ADD CONSTRAINT "work_order_documents_issue_id_fkey" FOREIGN KEY ("issue_id") REFERENCES "document_issues"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE UNIQUE INDEX "a document has one current issue" ON "document_issues" ("document_id") WHERE "state" = 'current';
