-- CreateTable
CREATE TABLE "reminder_settings" (
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "is_on" BOOLEAN NOT NULL,
    "intervals" INTEGER[],
    "sender_name" TEXT NOT NULL,
    "sender_email" TEXT NOT NULL,
    "reply_to" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "opening" TEXT NOT NULL,
    "closing" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "reminder_settings_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "reminder_choices" (
    "id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "wants_letters" BOOLEAN NOT NULL,
    "reason" TEXT NOT NULL,
    "said_on" DATE NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "reminder_choices_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "reminder_letters" (
    "id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "customer_id" UUID NOT NULL,
    "way" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "made_on" DATE NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "reminder_letters_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "reminder_letter_units" (
    "id" UUID NOT NULL,
    "letter_id" UUID NOT NULL,
    "unit_id" UUID NOT NULL,
    "interval_days" INTEGER NOT NULL,
    "counts_from" DATE NOT NULL,
    "due_on" DATE NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "reminder_letter_units_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "reminder_deliveries" (
    "letter_id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "to_name" TEXT NOT NULL,
    "to_email" TEXT NOT NULL,
    "to_address" TEXT NOT NULL,
    "message_id" TEXT NOT NULL,
    "tries" INTEGER NOT NULL DEFAULT 0,
    "next_try_at" TIMESTAMPTZ(3),
    "claimed_at" TIMESTAMPTZ(3),
    "outcome" TEXT NOT NULL DEFAULT '',
    "sent_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "reminder_deliveries_pkey" PRIMARY KEY ("letter_id")
);

-- CreateTable
CREATE TABLE "reminder_events" (
    "id" UUID NOT NULL,
    "letter_id" UUID NOT NULL,
    "what" TEXT NOT NULL,
    "detail" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "reminder_events_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "arrival_assumptions" (
    "id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "recommended_percent" INTEGER,
    "reason" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "arrival_assumptions_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "reminder_settings_version_key" ON "reminder_settings"("version");

-- CreateIndex
CREATE INDEX "reminder_settings_entry_id_idx" ON "reminder_settings"("entry_id");

-- CreateIndex
CREATE INDEX "reminder_choices_entry_id_idx" ON "reminder_choices"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "a choice about reminders has one number" ON "reminder_choices"("customer_id", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "reminder_letters_number_key" ON "reminder_letters"("number");

-- CreateIndex
CREATE INDEX "reminder_letters_customer_id_at_idx" ON "reminder_letters"("customer_id", "at");

-- CreateIndex
CREATE INDEX "reminder_letters_entry_id_idx" ON "reminder_letters"("entry_id");

-- CreateIndex
CREATE INDEX "reminder_letter_units_unit_id_counts_from_idx" ON "reminder_letter_units"("unit_id", "counts_from");

-- CreateIndex
CREATE INDEX "reminder_letter_units_entry_id_idx" ON "reminder_letter_units"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "a letter names a unit once" ON "reminder_letter_units"("letter_id", "unit_id");

-- CreateIndex
CREATE INDEX "reminder_deliveries_next_try_at_idx" ON "reminder_deliveries"("next_try_at");

-- CreateIndex
CREATE INDEX "reminder_deliveries_state_idx" ON "reminder_deliveries"("state");

-- CreateIndex
CREATE INDEX "reminder_events_letter_id_at_idx" ON "reminder_events"("letter_id", "at");

-- CreateIndex
CREATE INDEX "reminder_events_entry_id_idx" ON "reminder_events"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "arrival_assumptions_version_key" ON "arrival_assumptions"("version");

-- CreateIndex
CREATE INDEX "arrival_assumptions_entry_id_idx" ON "arrival_assumptions"("entry_id");

-- AddForeignKey
ALTER TABLE "reminder_choices" ADD CONSTRAINT "reminder_choices_customer_id_fkey" FOREIGN KEY ("customer_id") REFERENCES "customers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reminder_letters" ADD CONSTRAINT "reminder_letters_customer_id_fkey" FOREIGN KEY ("customer_id") REFERENCES "customers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reminder_letter_units" ADD CONSTRAINT "reminder_letter_units_letter_id_fkey" FOREIGN KEY ("letter_id") REFERENCES "reminder_letters"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reminder_letter_units" ADD CONSTRAINT "reminder_letter_units_unit_id_fkey" FOREIGN KEY ("unit_id") REFERENCES "serialized_items"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reminder_deliveries" ADD CONSTRAINT "reminder_deliveries_letter_id_fkey" FOREIGN KEY ("letter_id") REFERENCES "reminder_letters"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reminder_events" ADD CONSTRAINT "reminder_events_letter_id_fkey" FOREIGN KEY ("letter_id") REFERENCES "reminder_letters"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "reminder_settings" ADD CONSTRAINT "a reminder interval is a number of days"
  CHECK (cardinality("intervals") BETWEEN 1 AND 6 AND 0 < ALL ("intervals") AND 1096 > ALL ("intervals"));
ALTER TABLE "reminder_letters" ADD CONSTRAINT "a letter goes by e-mail or on paper" CHECK ("way" IN ('e-mail', 'paper'));
ALTER TABLE "reminder_deliveries" ADD CONSTRAINT "a letter is in one of its states"
  CHECK ("state" IN ('waiting', 'sending', 'sent', 'failed', 'to-post', 'posted', 'withdrawn'));
ALTER TABLE "reminder_deliveries" ADD CONSTRAINT "a letter that waits says when it is tried"
  CHECK (("state" IN ('waiting', 'sending')) = ("next_try_at" IS NOT NULL));
ALTER TABLE "reminder_deliveries" ADD CONSTRAINT "a letter that went says when"
  CHECK (("state" IN ('sent', 'posted')) = ("sent_at" IS NOT NULL));
ALTER TABLE "arrival_assumptions" ADD CONSTRAINT "a share is 0 to 100 percent"
  CHECK ("recommended_percent" BETWEEN 0 AND 100);
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "reminder_settings" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "reminder_settings" FROM hubwright_server;
GRANT SELECT ON "reminder_settings" TO hubwright_retention;
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "reminder_choices" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "reminder_choices" FROM hubwright_server;
GRANT SELECT ON "reminder_choices" TO hubwright_retention;
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "reminder_letters" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "reminder_letters" FROM hubwright_server;
GRANT SELECT ON "reminder_letters" TO hubwright_retention;
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "reminder_letter_units" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "reminder_letter_units" FROM hubwright_server;
GRANT SELECT ON "reminder_letter_units" TO hubwright_retention;
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "reminder_events" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "reminder_events" FROM hubwright_server;
GRANT SELECT ON "reminder_events" TO hubwright_retention;
CREATE TRIGGER "only added" BEFORE UPDATE OR DELETE OR TRUNCATE ON "arrival_assumptions" EXECUTE FUNCTION "refuse_change"();
REVOKE UPDATE, DELETE ON "arrival_assumptions" FROM hubwright_server;
GRANT SELECT ON "arrival_assumptions" TO hubwright_retention;
