-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "public";

-- CreateTable
CREATE TABLE "customers" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "contact_name" TEXT NOT NULL DEFAULT '',
    "email" TEXT NOT NULL DEFAULT '',
    "phone" TEXT NOT NULL DEFAULT '',
    "address" TEXT NOT NULL DEFAULT '',
    "accepted_sources" TEXT[],
    "unpaid_hold" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "customers_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "aircraft" (
    "id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "registration" TEXT NOT NULL,
    "airframe" TEXT NOT NULL,
    "engine" TEXT NOT NULL,

    CONSTRAINT "aircraft_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "aircraft_readings" (
    "id" UUID NOT NULL,
    "aircraft_id" UUID NOT NULL,
    "read_on" DATE NOT NULL,
    "meter" TEXT NOT NULL,
    "hours_tenths" INTEGER NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "aircraft_readings_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "staged_files" (
    "id" UUID NOT NULL,
    "hash" TEXT NOT NULL,
    "size" INTEGER NOT NULL,
    "media_type" TEXT NOT NULL,
    "width" INTEGER,
    "height" INTEGER,
    "thumbnail_hash" TEXT,
    "thumbnail_size" INTEGER,
    "uploaded_by" UUID NOT NULL,
    "uploaded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "staged_files_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "photos" (
    "id" UUID NOT NULL,
    "subject_kind" TEXT NOT NULL,
    "subject_id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "file_hash" TEXT NOT NULL,
    "thumbnail_file_hash" TEXT,
    "media_type" TEXT NOT NULL,
    "width" INTEGER,
    "height" INTEGER,
    "title" TEXT NOT NULL,
    "taken_at" TIMESTAMPTZ(3),
    "added_by" UUID NOT NULL,
    "added_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "photos_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "struck_photos" (
    "id" UUID NOT NULL,
    "photo_id" UUID NOT NULL,
    "reason" TEXT NOT NULL,
    "struck_by" UUID NOT NULL,
    "struck_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "struck_photos_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "findings" (
    "id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "traveler_id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "step_id" UUID,
    "area" TEXT NOT NULL,
    "damage" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "description" TEXT NOT NULL,
    "raised_by" UUID NOT NULL,
    "raised_at" TIMESTAMPTZ(3) NOT NULL,
    "disposition" TEXT,
    "disposition_note" TEXT NOT NULL DEFAULT '',
    "sign_off_id" UUID,
    "labour_minor" INTEGER NOT NULL DEFAULT 0,
    "over_and_above" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1,
    "ended_step_ids" UUID[],

    CONSTRAINT "findings_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "finding_parts" (
    "id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "part_id" UUID NOT NULL,
    "position" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,

    CONSTRAINT "finding_parts_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "superseded_dispositions" (
    "id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "disposition" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "labour_minor" INTEGER NOT NULL,
    "over_and_above" BOOLEAN NOT NULL,
    "parts" JSONB NOT NULL,
    "steps" JSONB NOT NULL,
    "sign_off_id" UUID NOT NULL,
    "reason" TEXT NOT NULL,
    "superseded_at" TIMESTAMPTZ(3) NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "superseded_dispositions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "parts" (
    "id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "maker" TEXT NOT NULL,
    "description" TEXT NOT NULL,
    "class" TEXT NOT NULL,
    "issue_unit" TEXT NOT NULL,
    "pack_size" INTEGER NOT NULL DEFAULT 1,
    "shelf_life_months" INTEGER,
    "minimum_days_at_build" INTEGER NOT NULL DEFAULT 0,
    "certificate_required" BOOLEAN NOT NULL DEFAULT true,
    "serialised" BOOLEAN NOT NULL DEFAULT false,
    "lead_time_days" INTEGER NOT NULL,
    "unit_price" TEXT NOT NULL,
    "supplier_id" UUID,
    "home_bin" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "parts_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "part_alternates" (
    "id" UUID NOT NULL,
    "part_id" UUID NOT NULL,
    "use_id" UUID NOT NULL,
    "preference" INTEGER NOT NULL,

    CONSTRAINT "part_alternates_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "bins" (
    "code" TEXT NOT NULL,
    "title" TEXT NOT NULL DEFAULT '',
    "walk" INTEGER NOT NULL,

    CONSTRAINT "bins_pkey" PRIMARY KEY ("code")
);

-- CreateTable
CREATE TABLE "lots" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "part_id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "origin" TEXT NOT NULL,
    "source_class" TEXT NOT NULL,
    "supplier_lot" TEXT NOT NULL DEFAULT '',
    "certificate" TEXT NOT NULL DEFAULT '',
    "cure_date" TEXT,
    "expires_on" DATE,
    "owner_id" UUID,
    "serial" TEXT,
    "unit_price" TEXT NOT NULL,
    "purchase_order_line_id" UUID,
    "work_order_id" UUID,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "lots_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "balances" (
    "lot_id" UUID NOT NULL,
    "place_kind" TEXT NOT NULL,
    "place_ref" TEXT NOT NULL,
    "on_hand" INTEGER NOT NULL,

    CONSTRAINT "balances_pkey" PRIMARY KEY ("lot_id","place_kind","place_ref")
);

-- CreateTable
CREATE TABLE "movements" (
    "id" UUID NOT NULL,
    "sequence" BIGSERIAL NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "lot_id" UUID NOT NULL,
    "part_id" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "from_kind" TEXT NOT NULL,
    "from_ref" TEXT NOT NULL,
    "to_kind" TEXT NOT NULL,
    "to_ref" TEXT NOT NULL,
    "position" TEXT,
    "kit_line_id" UUID,
    "reason" TEXT NOT NULL,
    "reverses_id" UUID,
    "person_id" UUID NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "movements_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "reservations" (
    "id" UUID NOT NULL,
    "kit_line_id" UUID NOT NULL,
    "lot_id" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "reservations_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "kits" (
    "id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "revision_id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "need_by" DATE NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "closed_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "kits_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "kit_lines" (
    "id" UUID NOT NULL,
    "kit_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "part_id" UUID NOT NULL,
    "position" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "minimum" INTEGER,
    "source" TEXT NOT NULL,
    "list_line_id" UUID,
    "finding_id" UUID,

    CONSTRAINT "kit_lines_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "unit_models" (
    "id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "maker" TEXT NOT NULL,
    "designation" TEXT NOT NULL,
    "blade_count" INTEGER,
    "material" TEXT NOT NULL,
    "pitch" TEXT NOT NULL,
    "identity_carried_by" TEXT NOT NULL DEFAULT 'hub',
    "description" TEXT NOT NULL DEFAULT '',
    "manual_id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "unit_models_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "applications" (
    "id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "airframe" TEXT NOT NULL,
    "engine" TEXT NOT NULL,
    "position" TEXT NOT NULL,
    "approval" TEXT NOT NULL,
    "settings" JSONB NOT NULL,

    CONSTRAINT "applications_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "manuals" (
    "id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "maker" TEXT NOT NULL,

    CONSTRAINT "manuals_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "manual_revisions" (
    "id" UUID NOT NULL,
    "manual_id" UUID NOT NULL,
    "revision" TEXT NOT NULL,
    "issued_on" DATE NOT NULL,
    "state" TEXT NOT NULL,
    "currency_checked_by" UUID,
    "currency_checked_on" DATE,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "manual_revisions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "kit_list_lines" (
    "id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "part_id" UUID NOT NULL,
    "position" TEXT NOT NULL,
    "scopes" TEXT[],
    "per" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "minimum" INTEGER,
    "source" TEXT NOT NULL,
    "serial_from" TEXT,
    "serial_to" TEXT,

    CONSTRAINT "kit_list_lines_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "route_templates" (
    "id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "part_class" TEXT NOT NULL,
    "scopes" TEXT[],
    "title" TEXT NOT NULL,
    "material" TEXT,

    CONSTRAINT "route_templates_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "route_steps" (
    "id" UUID NOT NULL,
    "route_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "instruction" TEXT NOT NULL DEFAULT '',
    "process" TEXT NOT NULL,
    "level" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "phase" TEXT NOT NULL,
    "standard_minutes" INTEGER NOT NULL,
    "instrument_kind" TEXT,
    "caution" TEXT,
    "fact" TEXT,
    "events" TEXT[],
    "branch" TEXT,
    "wait_minutes" INTEGER NOT NULL DEFAULT 0,
    "outside" BOOLEAN NOT NULL DEFAULT false,
    "batched" BOOLEAN NOT NULL DEFAULT false,
    "tools" TEXT[],
    "most_repairs" INTEGER NOT NULL DEFAULT 2,

    CONSTRAINT "route_steps_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "measure_specs" (
    "id" UUID NOT NULL,
    "step_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "decimals" INTEGER NOT NULL,
    "method" TEXT NOT NULL,
    "low" TEXT,
    "high" TEXT,

    CONSTRAINT "measure_specs_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "tbo_rules" (
    "id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "application_id" UUID,
    "hours_tenths" INTEGER,
    "months" INTEGER,
    "end_of_month" BOOLEAN NOT NULL DEFAULT false,
    "requirement" TEXT NOT NULL,

    CONSTRAINT "tbo_rules_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "life_limits" (
    "id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "part_number" TEXT NOT NULL,
    "hours_tenths" INTEGER,
    "cycles" INTEGER,

    CONSTRAINT "life_limits_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "flat_rates" (
    "id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "scope" TEXT NOT NULL,
    "labour_minutes" INTEGER NOT NULL,
    "labour_minor" INTEGER NOT NULL,

    CONSTRAINT "flat_rates_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "people" (
    "id" UUID NOT NULL,
    "sign_in_name" TEXT NOT NULL,
    "display_name" TEXT NOT NULL,
    "initials" TEXT NOT NULL,
    "email" TEXT,
    "certificate_number" TEXT,
    "roles" TEXT[],
    "password_hash" TEXT NOT NULL,
    "pin_hash" TEXT,
    "secrets_own" BOOLEAN NOT NULL DEFAULT false,
    "active" BOOLEAN NOT NULL DEFAULT true,
    "left_on" DATE,
    "leave_reason" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "people_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "given_names" (
    "hash" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "given_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "given_names_pkey" PRIMARY KEY ("hash")
);

-- CreateTable
CREATE TABLE "badges" (
    "code" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "issued_at" TIMESTAMPTZ(3) NOT NULL,
    "revoked_at" TIMESTAMPTZ(3),

    CONSTRAINT "badges_pkey" PRIMARY KEY ("code")
);

-- CreateTable
CREATE TABLE "second_factors" (
    "person_id" UUID NOT NULL,
    "sealed" TEXT NOT NULL,
    "last_step" INTEGER NOT NULL,
    "confirmed_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "second_factors_pkey" PRIMARY KEY ("person_id")
);

-- CreateTable
CREATE TABLE "recovery_codes" (
    "hash" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "used_at" TIMESTAMPTZ(3),

    CONSTRAINT "recovery_codes_pkey" PRIMARY KEY ("hash")
);

-- CreateTable
CREATE TABLE "device_sign_ins" (
    "device_hash" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "signed_in_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "device_sign_ins_pkey" PRIMARY KEY ("device_hash","person_id")
);

-- CreateTable
CREATE TABLE "authorisations" (
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "process" TEXT NOT NULL,
    "level" TEXT NOT NULL,
    "valid_from" DATE NOT NULL,
    "expires_on" DATE,
    "revoked_on" DATE,
    "granted_by" UUID NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "authorisations_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "shop_profile" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "name" TEXT NOT NULL,
    "certificate_number" TEXT NOT NULL,
    "ratings" TEXT[],
    "authority" TEXT NOT NULL,
    "record_statements" JSONB NOT NULL,
    "zone" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "units" TEXT NOT NULL,
    "labour_rate_minor" INTEGER NOT NULL,
    "evaluation_fee_minor" INTEGER NOT NULL,
    "tax_percent" TEXT NOT NULL,
    "tax_rounding" TEXT NOT NULL DEFAULT 'total',
    "quote_valid_days" INTEGER NOT NULL DEFAULT 30,
    "retention_rules" JSONB NOT NULL DEFAULT '[{"approval":"14 CFR 145.219","years":2}]',
    "inspect_own_work" TEXT[],
    "names_person_certificate" BOOLEAN NOT NULL DEFAULT false,
    "second_factor_roles" TEXT[] DEFAULT ARRAY['administrator']::TEXT[],
    "lock_after_minutes" INTEGER NOT NULL DEFAULT 10,
    "badge_switch_hours" INTEGER NOT NULL DEFAULT 12,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "shop_profile_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "session" (
    "sid" TEXT NOT NULL,
    "sess" JSON NOT NULL,
    "expire" TIMESTAMP(6) NOT NULL,

    CONSTRAINT "session_pkey" PRIMARY KEY ("sid")
);

-- CreateTable
CREATE TABLE "sign_in_attempts" (
    "key" VARCHAR(255) NOT NULL,
    "points" INTEGER NOT NULL DEFAULT 0,
    "expire" BIGINT,

    CONSTRAINT "sign_in_attempts_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "instruments" (
    "id" UUID NOT NULL,
    "tag" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "calibrated_on" DATE NOT NULL,
    "calibration_due_on" DATE NOT NULL,
    "location" TEXT NOT NULL DEFAULT '',
    "in_service" BOOLEAN NOT NULL DEFAULT true,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "instruments_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "suppliers" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL DEFAULT '',
    "phone" TEXT NOT NULL DEFAULT '',
    "approved_until" DATE,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "suppliers_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "purchase_orders" (
    "id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "supplier_id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "ordered_on" DATE NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "purchase_orders_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "purchase_order_lines" (
    "id" UUID NOT NULL,
    "order_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "part_id" UUID NOT NULL,
    "quantity" INTEGER NOT NULL,
    "received" INTEGER NOT NULL DEFAULT 0,
    "due_on" DATE NOT NULL,
    "unit_price" TEXT NOT NULL,

    CONSTRAINT "purchase_order_lines_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "quotes" (
    "id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "subtotal_minor" INTEGER NOT NULL,
    "tax_percent" TEXT NOT NULL,
    "tax_minor" INTEGER NOT NULL,
    "total_minor" INTEGER NOT NULL,
    "cap_minor" INTEGER,
    "valid_until" DATE NOT NULL,
    "promise_days" INTEGER,
    "sent_at" TIMESTAMPTZ(3),
    "decided_at" TIMESTAMPTZ(3),
    "decided_by_name" TEXT,
    "decision" TEXT,
    "decision_note" TEXT NOT NULL DEFAULT '',
    "decided_amount_minor" INTEGER,
    "supersedes_id" UUID,
    "file_hash" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "quotes_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "quote_lines" (
    "id" UUID NOT NULL,
    "quote_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "description" TEXT NOT NULL,
    "part_id" UUID,
    "finding_id" UUID,
    "quantity" INTEGER NOT NULL,
    "unit_price" TEXT NOT NULL,
    "amount_minor" INTEGER NOT NULL,
    "taxable" BOOLEAN NOT NULL,

    CONSTRAINT "quote_lines_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "chasers" (
    "id" UUID NOT NULL,
    "quote_id" UUID NOT NULL,
    "due_on" DATE NOT NULL,
    "sent_at" TIMESTAMPTZ(3),
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "chasers_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "receipts" (
    "person_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "command" TEXT NOT NULL,
    "input_hash" TEXT NOT NULL,
    "status" INTEGER,
    "reply" JSONB,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "receipts_pkey" PRIMARY KEY ("person_id","key")
);

-- CreateTable
CREATE TABLE "record_entries" (
    "id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "command" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "body" TEXT NOT NULL,

    CONSTRAINT "record_entries_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "record_links" (
    "subject_kind" TEXT NOT NULL,
    "subject_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "previous" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "record_links_pkey" PRIMARY KEY ("subject_kind","subject_id","sequence")
);

-- CreateTable
CREATE TABLE "record_heads" (
    "subject_kind" TEXT NOT NULL,
    "subject_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "hash" TEXT NOT NULL,

    CONSTRAINT "record_heads_pkey" PRIMARY KEY ("subject_kind","subject_id")
);

-- CreateTable
CREATE TABLE "shop_keys" (
    "id" TEXT NOT NULL,
    "sequence" SERIAL NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "statement" TEXT NOT NULL,
    "signature" TEXT NOT NULL,
    "previous_signature" TEXT,

    CONSTRAINT "shop_keys_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "anchors" (
    "sequence" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "body" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "key_id" TEXT NOT NULL,
    "signature" TEXT NOT NULL,

    CONSTRAINT "anchors_pkey" PRIMARY KEY ("sequence")
);

-- CreateTable
CREATE TABLE "anchored_heads" (
    "anchor" INTEGER NOT NULL,
    "subject_kind" TEXT NOT NULL,
    "subject_id" UUID NOT NULL,
    "after" INTEGER NOT NULL,
    "sequence" INTEGER NOT NULL,
    "hash" TEXT NOT NULL,

    CONSTRAINT "anchored_heads_pkey" PRIMARY KEY ("subject_kind","subject_id","sequence")
);

-- CreateTable
CREATE TABLE "purges" (
    "id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "body" TEXT NOT NULL,
    "key_id" TEXT NOT NULL,
    "signature" TEXT NOT NULL,

    CONSTRAINT "purges_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "personal_values" (
    "entry_id" UUID NOT NULL,
    "field" TEXT NOT NULL,
    "subject_kind" TEXT NOT NULL,
    "subject_id" UUID NOT NULL,
    "salt" TEXT NOT NULL,
    "value" JSONB NOT NULL,

    CONSTRAINT "personal_values_pkey" PRIMARY KEY ("entry_id","field")
);

-- CreateTable
CREATE TABLE "refusals" (
    "id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "person_id" UUID,
    "command" TEXT NOT NULL,
    "problem" TEXT NOT NULL,
    "detail" TEXT NOT NULL,
    "subject" JSONB NOT NULL,

    CONSTRAINT "refusals_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "outbox" (
    "id" BIGSERIAL NOT NULL,
    "transaction" BIGINT NOT NULL DEFAULT ((pg_current_xact_id())::text)::bigint,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "nouns" TEXT[],
    "subjects" JSONB NOT NULL,

    CONSTRAINT "outbox_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "stored_files" (
    "hash" TEXT NOT NULL,
    "size" INTEGER NOT NULL,
    "media_type" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "thumbnail_of" TEXT,

    CONSTRAINT "stored_files_pkey" PRIMARY KEY ("hash")
);

-- CreateTable
CREATE TABLE "counters" (
    "kind" TEXT NOT NULL,
    "next" INTEGER NOT NULL,

    CONSTRAINT "counters_pkey" PRIMARY KEY ("kind")
);

-- CreateTable
CREATE TABLE "releases" (
    "id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "word" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "content_hash" TEXT NOT NULL,
    "file_hash" TEXT NOT NULL,
    "sign_off_id" UUID NOT NULL,
    "released_at" TIMESTAMPTZ(3) NOT NULL,
    "supersedes_id" UUID,
    "entry_id" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "reason" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "releases_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "serialized_items" (
    "id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "model_id" UUID,
    "maker" TEXT NOT NULL,
    "part_number" TEXT NOT NULL,
    "serial" TEXT,
    "provisional_name" TEXT,
    "joined_into_id" UUID,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "serialized_items_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "installations" (
    "id" UUID NOT NULL,
    "item_id" UUID NOT NULL,
    "parent_id" UUID NOT NULL,
    "position" TEXT NOT NULL,
    "from_date" DATE NOT NULL,
    "to_date" DATE,

    CONSTRAINT "installations_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "time_records" (
    "id" UUID NOT NULL,
    "item_id" UUID NOT NULL,
    "recorded_on" DATE NOT NULL,
    "since_new_tenths" INTEGER,
    "since_overhaul_tenths" INTEGER,
    "since_new_cycles" INTEGER,
    "meter" TEXT,
    "meter_tenths" INTEGER,
    "basis" TEXT NOT NULL,
    "work_order_id" UUID,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "time_records_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "vendor_orders" (
    "id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "supplier_id" UUID NOT NULL,
    "purchase_order" TEXT NOT NULL,
    "paper_due" TEXT NOT NULL,
    "sent_on" DATE NOT NULL,
    "expected_on" DATE NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'out',
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "vendor_orders_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "vendor_lines" (
    "id" UUID NOT NULL,
    "order_id" UUID NOT NULL,
    "step_id" UUID NOT NULL,
    "back_at" TIMESTAMPTZ(3),
    "condition" TEXT,
    "certificate" TEXT,
    "note" TEXT NOT NULL DEFAULT '',
    "sign_off_id" UUID,

    CONSTRAINT "vendor_lines_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "vendor_pieces" (
    "id" UUID NOT NULL,
    "order_id" UUID NOT NULL,
    "lot_id" UUID NOT NULL,
    "rack_ref" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "back" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "vendor_pieces_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "work_orders" (
    "id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "customer_id" UUID NOT NULL,
    "aircraft_id" UUID,
    "application_id" UUID,
    "unit_id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "scope" TEXT NOT NULL,
    "stage" TEXT NOT NULL,
    "stage_since" TIMESTAMPTZ(3) NOT NULL,
    "consent" TEXT NOT NULL,
    "consent_since" TIMESTAMPTZ(3) NOT NULL,
    "received_on" DATE NOT NULL,
    "reason" TEXT NOT NULL,
    "events" TEXT[],
    "paperwork" TEXT[],
    "paperwork_note" TEXT NOT NULL DEFAULT '',
    "priority" INTEGER NOT NULL DEFAULT 2,
    "promised_on" DATE,
    "evaluation_cap_minor" INTEGER,
    "released_at" TIMESTAMPTZ(3),
    "ok_to_ship_at" TIMESTAMPTZ(3),
    "shipped_at" TIMESTAMPTZ(3),
    "closed_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "work_orders_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "loose_items" (
    "id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "description" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "returned_at" TIMESTAMPTZ(3),

    CONSTRAINT "loose_items_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "holds" (
    "id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "lifted_by_role" TEXT NOT NULL,
    "placed_by" UUID NOT NULL,
    "placed_at" TIMESTAMPTZ(3) NOT NULL,
    "lifted_by" UUID,
    "lifted_at" TIMESTAMPTZ(3),
    "lift_reason" TEXT,

    CONSTRAINT "holds_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "travelers" (
    "id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "item_id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "part_class" TEXT NOT NULL,
    "position" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "revision_id" UUID NOT NULL,
    "disposition" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "travelers_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "traveler_steps" (
    "id" UUID NOT NULL,
    "traveler_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "instruction" TEXT NOT NULL DEFAULT '',
    "process" TEXT NOT NULL,
    "level" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "phase" TEXT NOT NULL,
    "standard_minutes" INTEGER NOT NULL,
    "instrument_kind" TEXT,
    "caution" TEXT,
    "fact" TEXT,
    "branch" TEXT,
    "wait_minutes" INTEGER NOT NULL DEFAULT 0,
    "outside" BOOLEAN NOT NULL DEFAULT false,
    "batched" BOOLEAN NOT NULL DEFAULT false,
    "tools" TEXT[],
    "attempt" INTEGER NOT NULL DEFAULT 1,
    "most_repairs" INTEGER NOT NULL DEFAULT 2,
    "wait_until" TIMESTAMPTZ(3),
    "finding_id" UUID,
    "state" TEXT NOT NULL DEFAULT 'open',
    "signed_at" TIMESTAMPTZ(3),

    CONSTRAINT "traveler_steps_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "loads" (
    "id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "process" TEXT NOT NULL,
    "equipment" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'open',
    "started_by" UUID NOT NULL,
    "started_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "loads_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "load_parts" (
    "id" UUID NOT NULL,
    "load_id" UUID NOT NULL,
    "step_id" UUID NOT NULL,
    "open" BOOLEAN NOT NULL DEFAULT true,
    "out" TEXT,

    CONSTRAINT "load_parts_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "step_measures" (
    "id" UUID NOT NULL,
    "step_id" UUID NOT NULL,
    "sequence" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "decimals" INTEGER NOT NULL,
    "method" TEXT NOT NULL,
    "low" TEXT,
    "high" TEXT,

    CONSTRAINT "step_measures_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "sign_offs" (
    "id" UUID NOT NULL,
    "work_order_id" UUID NOT NULL,
    "step_id" UUID,
    "subject_kind" TEXT NOT NULL,
    "subject_id" UUID NOT NULL,
    "meaning" TEXT NOT NULL,
    "result" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "authorisation" JSONB NOT NULL,
    "revision_id" UUID NOT NULL,
    "instrument_id" UUID,
    "performed_at" TIMESTAMPTZ(3) NOT NULL,
    "signed_at" TIMESTAMPTZ(3) NOT NULL,
    "late_reason" TEXT,
    "content" TEXT NOT NULL,
    "content_hash" TEXT NOT NULL,
    "supersedes_id" UUID,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "sign_offs_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "measurements" (
    "id" UUID NOT NULL,
    "sign_off_id" UUID NOT NULL,
    "measure_id" UUID NOT NULL,
    "value" TEXT NOT NULL,
    "pass" BOOLEAN NOT NULL,
    "compared" TEXT NOT NULL,
    "entry_id" UUID NOT NULL,

    CONSTRAINT "measurements_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "customers_code_key" ON "customers"("code");

-- CreateIndex
CREATE UNIQUE INDEX "aircraft_registration_key" ON "aircraft"("registration");

-- CreateIndex
CREATE INDEX "aircraft_customer_id_idx" ON "aircraft"("customer_id");

-- CreateIndex
CREATE UNIQUE INDEX "aircraft_readings_aircraft_id_meter_read_on_hours_tenths_key" ON "aircraft_readings"("aircraft_id", "meter", "read_on", "hours_tenths");

-- CreateIndex
CREATE INDEX "staged_files_uploaded_at_idx" ON "staged_files"("uploaded_at");

-- CreateIndex
CREATE INDEX "staged_files_hash_idx" ON "staged_files"("hash");

-- CreateIndex
CREATE INDEX "staged_files_thumbnail_hash_idx" ON "staged_files"("thumbnail_hash");

-- CreateIndex
CREATE INDEX "photos_subject_kind_subject_id_idx" ON "photos"("subject_kind", "subject_id");

-- CreateIndex
CREATE INDEX "photos_work_order_id_idx" ON "photos"("work_order_id");

-- CreateIndex
CREATE INDEX "photos_entry_id_idx" ON "photos"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "struck_photos_photo_id_key" ON "struck_photos"("photo_id");

-- CreateIndex
CREATE INDEX "struck_photos_entry_id_idx" ON "struck_photos"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "findings_number_key" ON "findings"("number");

-- CreateIndex
CREATE INDEX "findings_work_order_id_idx" ON "findings"("work_order_id");

-- CreateIndex
CREATE INDEX "finding_parts_finding_id_idx" ON "finding_parts"("finding_id");

-- CreateIndex
CREATE UNIQUE INDEX "superseded_dispositions_sign_off_id_key" ON "superseded_dispositions"("sign_off_id");

-- CreateIndex
CREATE INDEX "superseded_dispositions_finding_id_idx" ON "superseded_dispositions"("finding_id");

-- CreateIndex
CREATE INDEX "superseded_dispositions_entry_id_idx" ON "superseded_dispositions"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "parts_number_key" ON "parts"("number");

-- CreateIndex
CREATE UNIQUE INDEX "part_alternates_part_id_use_id_key" ON "part_alternates"("part_id", "use_id");

-- CreateIndex
CREATE UNIQUE INDEX "lots_code_key" ON "lots"("code");

-- CreateIndex
CREATE INDEX "lots_part_id_state_idx" ON "lots"("part_id", "state");

-- CreateIndex
CREATE INDEX "lots_work_order_id_idx" ON "lots"("work_order_id");

-- CreateIndex
CREATE INDEX "balances_place_kind_place_ref_idx" ON "balances"("place_kind", "place_ref");

-- CreateIndex
CREATE UNIQUE INDEX "movements_sequence_key" ON "movements"("sequence");

-- CreateIndex
CREATE UNIQUE INDEX "movements_reverses_id_key" ON "movements"("reverses_id");

-- CreateIndex
CREATE INDEX "movements_lot_id_sequence_idx" ON "movements"("lot_id", "sequence");

-- CreateIndex
CREATE INDEX "movements_from_kind_from_ref_idx" ON "movements"("from_kind", "from_ref");

-- CreateIndex
CREATE INDEX "movements_to_kind_to_ref_idx" ON "movements"("to_kind", "to_ref");

-- CreateIndex
CREATE INDEX "movements_part_id_sequence_idx" ON "movements"("part_id", "sequence");

-- CreateIndex
CREATE INDEX "movements_kit_line_id_idx" ON "movements"("kit_line_id");

-- CreateIndex
CREATE INDEX "movements_entry_id_idx" ON "movements"("entry_id");

-- CreateIndex
CREATE INDEX "reservations_lot_id_idx" ON "reservations"("lot_id");

-- CreateIndex
CREATE UNIQUE INDEX "reservations_kit_line_id_lot_id_key" ON "reservations"("kit_line_id", "lot_id");

-- CreateIndex
CREATE UNIQUE INDEX "kits_code_key" ON "kits"("code");

-- CreateIndex
CREATE INDEX "kits_work_order_id_idx" ON "kits"("work_order_id");

-- CreateIndex
CREATE INDEX "kits_state_need_by_idx" ON "kits"("state", "need_by");

-- CreateIndex
CREATE INDEX "kit_lines_part_id_idx" ON "kit_lines"("part_id");

-- CreateIndex
CREATE UNIQUE INDEX "kit_lines_kit_id_sequence_key" ON "kit_lines"("kit_id", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "unit_models_maker_designation_key" ON "unit_models"("maker", "designation");

-- CreateIndex
CREATE UNIQUE INDEX "applications_model_id_airframe_engine_position_key" ON "applications"("model_id", "airframe", "engine", "position");

-- CreateIndex
CREATE UNIQUE INDEX "manuals_number_key" ON "manuals"("number");

-- CreateIndex
CREATE UNIQUE INDEX "manual_revisions_manual_id_revision_key" ON "manual_revisions"("manual_id", "revision");

-- CreateIndex
CREATE UNIQUE INDEX "kit_list_lines_revision_id_model_id_sequence_key" ON "kit_list_lines"("revision_id", "model_id", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "route_templates_revision_id_model_id_part_class_title_key" ON "route_templates"("revision_id", "model_id", "part_class", "title");

-- CreateIndex
CREATE UNIQUE INDEX "route_steps_route_id_sequence_key" ON "route_steps"("route_id", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "measure_specs_step_id_sequence_key" ON "measure_specs"("step_id", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "life_limits_revision_id_model_id_part_number_key" ON "life_limits"("revision_id", "model_id", "part_number");

-- CreateIndex
CREATE UNIQUE INDEX "flat_rates_model_id_scope_key" ON "flat_rates"("model_id", "scope");

-- CreateIndex
CREATE UNIQUE INDEX "people_sign_in_name_key" ON "people"("sign_in_name");

-- CreateIndex
CREATE INDEX "badges_person_id_idx" ON "badges"("person_id");

-- CreateIndex
CREATE INDEX "recovery_codes_person_id_idx" ON "recovery_codes"("person_id");

-- CreateIndex
CREATE INDEX "authorisations_person_id_process_idx" ON "authorisations"("person_id", "process");

-- CreateIndex
CREATE INDEX "session_expire_idx" ON "session"("expire");

-- CreateIndex
CREATE UNIQUE INDEX "instruments_tag_key" ON "instruments"("tag");

-- CreateIndex
CREATE INDEX "instruments_kind_idx" ON "instruments"("kind");

-- CreateIndex
CREATE UNIQUE INDEX "suppliers_code_key" ON "suppliers"("code");

-- CreateIndex
CREATE UNIQUE INDEX "purchase_orders_number_key" ON "purchase_orders"("number");

-- CreateIndex
CREATE INDEX "purchase_order_lines_part_id_idx" ON "purchase_order_lines"("part_id");

-- CreateIndex
CREATE UNIQUE INDEX "purchase_order_lines_order_id_sequence_key" ON "purchase_order_lines"("order_id", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "quotes_number_key" ON "quotes"("number");

-- CreateIndex
CREATE UNIQUE INDEX "quotes_supersedes_id_key" ON "quotes"("supersedes_id");

-- CreateIndex
CREATE INDEX "quotes_state_idx" ON "quotes"("state");

-- CreateIndex
CREATE UNIQUE INDEX "quotes_work_order_id_kind_revision_key" ON "quotes"("work_order_id", "kind", "revision");

-- CreateIndex
CREATE UNIQUE INDEX "quote_lines_quote_id_sequence_key" ON "quote_lines"("quote_id", "sequence");

-- CreateIndex
CREATE INDEX "chasers_quote_id_due_on_idx" ON "chasers"("quote_id", "due_on");

-- CreateIndex
CREATE INDEX "receipts_created_at_idx" ON "receipts"("created_at");

-- CreateIndex
CREATE INDEX "record_entries_at_idx" ON "record_entries"("at");

-- CreateIndex
CREATE INDEX "record_entries_person_id_at_idx" ON "record_entries"("person_id", "at");

-- CreateIndex
CREATE INDEX "record_links_entry_id_idx" ON "record_links"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "shop_keys_sequence_key" ON "shop_keys"("sequence");

-- CreateIndex
CREATE INDEX "anchored_heads_anchor_subject_kind_subject_id_idx" ON "anchored_heads"("anchor", "subject_kind", "subject_id");

-- CreateIndex
CREATE INDEX "personal_values_subject_kind_subject_id_idx" ON "personal_values"("subject_kind", "subject_id");

-- CreateIndex
CREATE INDEX "refusals_at_idx" ON "refusals"("at");

-- CreateIndex
CREATE INDEX "outbox_transaction_id_idx" ON "outbox"("transaction", "id");

-- CreateIndex
CREATE UNIQUE INDEX "releases_number_key" ON "releases"("number");

-- CreateIndex
CREATE UNIQUE INDEX "releases_supersedes_id_key" ON "releases"("supersedes_id");

-- CreateIndex
CREATE INDEX "releases_work_order_id_idx" ON "releases"("work_order_id");

-- CreateIndex
CREATE INDEX "releases_entry_id_idx" ON "releases"("entry_id");

-- CreateIndex
CREATE INDEX "serialized_items_serial_idx" ON "serialized_items"("serial");

-- CreateIndex
CREATE UNIQUE INDEX "serialized_items_maker_part_number_serial_key" ON "serialized_items"("maker", "part_number", "serial");

-- CreateIndex
CREATE INDEX "installations_item_id_idx" ON "installations"("item_id");

-- CreateIndex
CREATE INDEX "installations_parent_id_idx" ON "installations"("parent_id");

-- CreateIndex
CREATE INDEX "time_records_item_id_recorded_on_idx" ON "time_records"("item_id", "recorded_on");

-- CreateIndex
CREATE UNIQUE INDEX "vendor_orders_number_key" ON "vendor_orders"("number");

-- CreateIndex
CREATE INDEX "vendor_orders_state_expected_on_idx" ON "vendor_orders"("state", "expected_on");

-- CreateIndex
CREATE INDEX "vendor_lines_step_id_idx" ON "vendor_lines"("step_id");

-- CreateIndex
CREATE UNIQUE INDEX "vendor_lines_order_id_step_id_key" ON "vendor_lines"("order_id", "step_id");

-- CreateIndex
CREATE INDEX "vendor_pieces_lot_id_idx" ON "vendor_pieces"("lot_id");

-- CreateIndex
CREATE UNIQUE INDEX "vendor_pieces_order_id_lot_id_key" ON "vendor_pieces"("order_id", "lot_id");

-- CreateIndex
CREATE UNIQUE INDEX "work_orders_number_key" ON "work_orders"("number");

-- CreateIndex
CREATE INDEX "work_orders_stage_idx" ON "work_orders"("stage");

-- CreateIndex
CREATE INDEX "work_orders_consent_idx" ON "work_orders"("consent");

-- CreateIndex
CREATE INDEX "work_orders_customer_id_idx" ON "work_orders"("customer_id");

-- CreateIndex
CREATE INDEX "work_orders_unit_id_idx" ON "work_orders"("unit_id");

-- CreateIndex
CREATE INDEX "loose_items_work_order_id_idx" ON "loose_items"("work_order_id");

-- CreateIndex
CREATE INDEX "holds_work_order_id_idx" ON "holds"("work_order_id");

-- CreateIndex
CREATE UNIQUE INDEX "travelers_number_key" ON "travelers"("number");

-- CreateIndex
CREATE INDEX "travelers_work_order_id_idx" ON "travelers"("work_order_id");

-- CreateIndex
CREATE UNIQUE INDEX "traveler_steps_traveler_id_sequence_key" ON "traveler_steps"("traveler_id", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "loads_number_key" ON "loads"("number");

-- CreateIndex
CREATE INDEX "loads_state_idx" ON "loads"("state");

-- CreateIndex
CREATE INDEX "load_parts_step_id_idx" ON "load_parts"("step_id");

-- CreateIndex
CREATE UNIQUE INDEX "load_parts_load_id_step_id_key" ON "load_parts"("load_id", "step_id");

-- CreateIndex
CREATE UNIQUE INDEX "step_measures_step_id_sequence_key" ON "step_measures"("step_id", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "sign_offs_supersedes_id_key" ON "sign_offs"("supersedes_id");

-- CreateIndex
CREATE INDEX "sign_offs_work_order_id_idx" ON "sign_offs"("work_order_id");

-- CreateIndex
CREATE INDEX "sign_offs_step_id_idx" ON "sign_offs"("step_id");

-- CreateIndex
CREATE INDEX "sign_offs_instrument_id_idx" ON "sign_offs"("instrument_id");

-- CreateIndex
CREATE INDEX "sign_offs_entry_id_idx" ON "sign_offs"("entry_id");

-- CreateIndex
CREATE INDEX "measurements_entry_id_idx" ON "measurements"("entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "measurements_sign_off_id_measure_id_key" ON "measurements"("sign_off_id", "measure_id");

-- AddForeignKey
ALTER TABLE "aircraft" ADD CONSTRAINT "aircraft_customer_id_fkey" FOREIGN KEY ("customer_id") REFERENCES "customers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "aircraft_readings" ADD CONSTRAINT "aircraft_readings_aircraft_id_fkey" FOREIGN KEY ("aircraft_id") REFERENCES "aircraft"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "photos" ADD CONSTRAINT "photos_file_hash_fkey" FOREIGN KEY ("file_hash") REFERENCES "stored_files"("hash") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "photos" ADD CONSTRAINT "photos_thumbnail_file_hash_fkey" FOREIGN KEY ("thumbnail_file_hash") REFERENCES "stored_files"("hash") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "struck_photos" ADD CONSTRAINT "struck_photos_photo_id_fkey" FOREIGN KEY ("photo_id") REFERENCES "photos"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "findings" ADD CONSTRAINT "findings_work_order_id_fkey" FOREIGN KEY ("work_order_id") REFERENCES "work_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "findings" ADD CONSTRAINT "findings_traveler_id_fkey" FOREIGN KEY ("traveler_id") REFERENCES "travelers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding_parts" ADD CONSTRAINT "finding_parts_finding_id_fkey" FOREIGN KEY ("finding_id") REFERENCES "findings"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding_parts" ADD CONSTRAINT "finding_parts_part_id_fkey" FOREIGN KEY ("part_id") REFERENCES "parts"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "superseded_dispositions" ADD CONSTRAINT "superseded_dispositions_finding_id_fkey" FOREIGN KEY ("finding_id") REFERENCES "findings"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "parts" ADD CONSTRAINT "parts_supplier_id_fkey" FOREIGN KEY ("supplier_id") REFERENCES "suppliers"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_alternates" ADD CONSTRAINT "part_alternates_part_id_fkey" FOREIGN KEY ("part_id") REFERENCES "parts"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_alternates" ADD CONSTRAINT "part_alternates_use_id_fkey" FOREIGN KEY ("use_id") REFERENCES "parts"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "lots" ADD CONSTRAINT "lots_part_id_fkey" FOREIGN KEY ("part_id") REFERENCES "parts"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "lots" ADD CONSTRAINT "lots_purchase_order_line_id_fkey" FOREIGN KEY ("purchase_order_line_id") REFERENCES "purchase_order_lines"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "balances" ADD CONSTRAINT "balances_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "lots"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "movements" ADD CONSTRAINT "movements_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "lots"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reservations" ADD CONSTRAINT "reservations_kit_line_id_fkey" FOREIGN KEY ("kit_line_id") REFERENCES "kit_lines"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reservations" ADD CONSTRAINT "reservations_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "lots"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "kits" ADD CONSTRAINT "kits_work_order_id_fkey" FOREIGN KEY ("work_order_id") REFERENCES "work_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "kit_lines" ADD CONSTRAINT "kit_lines_kit_id_fkey" FOREIGN KEY ("kit_id") REFERENCES "kits"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "kit_lines" ADD CONSTRAINT "kit_lines_part_id_fkey" FOREIGN KEY ("part_id") REFERENCES "parts"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "unit_models" ADD CONSTRAINT "unit_models_manual_id_fkey" FOREIGN KEY ("manual_id") REFERENCES "manuals"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "applications" ADD CONSTRAINT "applications_model_id_fkey" FOREIGN KEY ("model_id") REFERENCES "unit_models"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "manual_revisions" ADD CONSTRAINT "manual_revisions_manual_id_fkey" FOREIGN KEY ("manual_id") REFERENCES "manuals"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "kit_list_lines" ADD CONSTRAINT "kit_list_lines_revision_id_fkey" FOREIGN KEY ("revision_id") REFERENCES "manual_revisions"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "kit_list_lines" ADD CONSTRAINT "kit_list_lines_part_id_fkey" FOREIGN KEY ("part_id") REFERENCES "parts"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "route_templates" ADD CONSTRAINT "route_templates_revision_id_fkey" FOREIGN KEY ("revision_id") REFERENCES "manual_revisions"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "route_steps" ADD CONSTRAINT "route_steps_route_id_fkey" FOREIGN KEY ("route_id") REFERENCES "route_templates"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "measure_specs" ADD CONSTRAINT "measure_specs_step_id_fkey" FOREIGN KEY ("step_id") REFERENCES "route_steps"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "tbo_rules" ADD CONSTRAINT "tbo_rules_revision_id_fkey" FOREIGN KEY ("revision_id") REFERENCES "manual_revisions"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "life_limits" ADD CONSTRAINT "life_limits_revision_id_fkey" FOREIGN KEY ("revision_id") REFERENCES "manual_revisions"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "flat_rates" ADD CONSTRAINT "flat_rates_model_id_fkey" FOREIGN KEY ("model_id") REFERENCES "unit_models"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "badges" ADD CONSTRAINT "badges_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "second_factors" ADD CONSTRAINT "second_factors_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "recovery_codes" ADD CONSTRAINT "recovery_codes_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "device_sign_ins" ADD CONSTRAINT "device_sign_ins_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "authorisations" ADD CONSTRAINT "authorisations_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "purchase_orders" ADD CONSTRAINT "purchase_orders_supplier_id_fkey" FOREIGN KEY ("supplier_id") REFERENCES "suppliers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "purchase_order_lines" ADD CONSTRAINT "purchase_order_lines_order_id_fkey" FOREIGN KEY ("order_id") REFERENCES "purchase_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "purchase_order_lines" ADD CONSTRAINT "purchase_order_lines_part_id_fkey" FOREIGN KEY ("part_id") REFERENCES "parts"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quotes" ADD CONSTRAINT "quotes_work_order_id_fkey" FOREIGN KEY ("work_order_id") REFERENCES "work_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quote_lines" ADD CONSTRAINT "quote_lines_quote_id_fkey" FOREIGN KEY ("quote_id") REFERENCES "quotes"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "chasers" ADD CONSTRAINT "chasers_quote_id_fkey" FOREIGN KEY ("quote_id") REFERENCES "quotes"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "record_links" ADD CONSTRAINT "record_links_entry_id_fkey" FOREIGN KEY ("entry_id") REFERENCES "record_entries"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "releases" ADD CONSTRAINT "releases_work_order_id_fkey" FOREIGN KEY ("work_order_id") REFERENCES "work_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "serialized_items" ADD CONSTRAINT "serialized_items_joined_into_id_fkey" FOREIGN KEY ("joined_into_id") REFERENCES "serialized_items"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "serialized_items" ADD CONSTRAINT "serialized_items_model_id_fkey" FOREIGN KEY ("model_id") REFERENCES "unit_models"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "installations" ADD CONSTRAINT "installations_item_id_fkey" FOREIGN KEY ("item_id") REFERENCES "serialized_items"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "installations" ADD CONSTRAINT "installations_parent_id_fkey" FOREIGN KEY ("parent_id") REFERENCES "serialized_items"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "time_records" ADD CONSTRAINT "time_records_item_id_fkey" FOREIGN KEY ("item_id") REFERENCES "serialized_items"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vendor_orders" ADD CONSTRAINT "vendor_orders_supplier_id_fkey" FOREIGN KEY ("supplier_id") REFERENCES "suppliers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vendor_lines" ADD CONSTRAINT "vendor_lines_order_id_fkey" FOREIGN KEY ("order_id") REFERENCES "vendor_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vendor_lines" ADD CONSTRAINT "vendor_lines_step_id_fkey" FOREIGN KEY ("step_id") REFERENCES "traveler_steps"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vendor_pieces" ADD CONSTRAINT "vendor_pieces_order_id_fkey" FOREIGN KEY ("order_id") REFERENCES "vendor_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vendor_pieces" ADD CONSTRAINT "vendor_pieces_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "lots"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "work_orders" ADD CONSTRAINT "work_orders_customer_id_fkey" FOREIGN KEY ("customer_id") REFERENCES "customers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "work_orders" ADD CONSTRAINT "work_orders_aircraft_id_fkey" FOREIGN KEY ("aircraft_id") REFERENCES "aircraft"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "work_orders" ADD CONSTRAINT "work_orders_application_id_fkey" FOREIGN KEY ("application_id") REFERENCES "applications"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "work_orders" ADD CONSTRAINT "work_orders_unit_id_fkey" FOREIGN KEY ("unit_id") REFERENCES "serialized_items"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "work_orders" ADD CONSTRAINT "work_orders_model_id_fkey" FOREIGN KEY ("model_id") REFERENCES "unit_models"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "work_orders" ADD CONSTRAINT "work_orders_revision_id_fkey" FOREIGN KEY ("revision_id") REFERENCES "manual_revisions"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "loose_items" ADD CONSTRAINT "loose_items_work_order_id_fkey" FOREIGN KEY ("work_order_id") REFERENCES "work_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "holds" ADD CONSTRAINT "holds_work_order_id_fkey" FOREIGN KEY ("work_order_id") REFERENCES "work_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "travelers" ADD CONSTRAINT "travelers_work_order_id_fkey" FOREIGN KEY ("work_order_id") REFERENCES "work_orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "travelers" ADD CONSTRAINT "travelers_item_id_fkey" FOREIGN KEY ("item_id") REFERENCES "serialized_items"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "traveler_steps" ADD CONSTRAINT "traveler_steps_traveler_id_fkey" FOREIGN KEY ("traveler_id") REFERENCES "travelers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "load_parts" ADD CONSTRAINT "load_parts_load_id_fkey" FOREIGN KEY ("load_id") REFERENCES "loads"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "load_parts" ADD CONSTRAINT "load_parts_step_id_fkey" FOREIGN KEY ("step_id") REFERENCES "traveler_steps"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "step_measures" ADD CONSTRAINT "step_measures_step_id_fkey" FOREIGN KEY ("step_id") REFERENCES "traveler_steps"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sign_offs" ADD CONSTRAINT "sign_offs_step_id_fkey" FOREIGN KEY ("step_id") REFERENCES "traveler_steps"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "measurements" ADD CONSTRAINT "measurements_sign_off_id_fkey" FOREIGN KEY ("sign_off_id") REFERENCES "sign_offs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "measurements" ADD CONSTRAINT "measurements_measure_id_fkey" FOREIGN KEY ("measure_id") REFERENCES "step_measures"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
