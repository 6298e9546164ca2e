import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, line, pieces, signature } from '../values.ts';
import { placeKinds } from './shapes.ts';
import { binCode, freed } from './values.ts';

const parts = ['parts-room'] as const;
const held = changed.extend({ freed }).meta({ id: 'LotHeld' });
/** A second person, who saw it and signs with their own password or PIN. */
const witnessed = { witnessId: id, witnessSignature: signature };

/** What is done with lots beside receiving, moving and using them. Every one is movements of the ledger. */
export const handlingOperations = {
  witnesses: read({
    id: 'witnesses',
    noun: 'inventory',
    path: '/api/inventory/witnesses',
    access: ['parts-room', 'technician'],
    summary: 'Who may sign as a witness beside the asking person, by name',
    input: z.strictObject({}),
    output: z
      .object({ rows: z.array(z.object({ id, displayName: z.string(), hasPin: z.boolean() })) })
      .meta({ id: 'Witnesses' }),
  }),
  splitLot: command({
    id: 'split-lot',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/split',
    access: parts,
    versioned: true,
    summary:
      'Give some pieces of a lot in a bin, in quarantine or held for their owner a lot of their own, with the same paper and dates',
    input: z.strictObject({
      lotId: id,
      bin: binCode.optional(),
      /** Needed where they lie in neither bin nor quarantine. */
      place: z.enum(placeKinds).optional(),
      quantity: pieces,
      reason: line,
    }),
    output: held.extend({ newLotId: id, newCode: z.string() }).meta({ id: 'LotSplit' }),
    touches: ['kits'],
    problems: ['not-enough', 'nothing-to-split', 'lot-suspected', 'not-divided-here', 'already-surrendered'],
  }),
  mergeLots: command({
    id: 'merge-lots',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/merge',
    access: parts,
    versioned: true,
    summary:
      'Put what a lot has in bins, in quarantine and held for its owner under another lot that is the same in every respect',
    input: z.strictObject({ lotId: id, intoId: id, reason: line }),
    output: changed.extend({ intoVersion: z.int(), quantity: z.int() }).meta({ id: 'LotsMerged' }),
    touches: ['kits'],
    problems: ['lots-differ', 'not-enough', 'lot-suspected', 'not-divided-here', 'already-surrendered'],
  }),
  scrapLot: command({
    id: 'scrap-lot',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/scrap',
    access: parts,
    signs: 'I made these pieces unusable for good and took them out of stock.',
    witnessed: 'I saw that these pieces were made unusable for good.',
    summary: 'Scrap pieces from a bin, from quarantine or from what is held for their owner, before a witness',
    input: z.strictObject({
      lotId: id,
      bin: binCode.optional(),
      quantity: pieces,
      reason: line,
      signature,
      ...witnessed,
    }),
    output: held.extend({ movementId: id }).meta({ id: 'LotScrapped' }),
    touches: ['kits'],
    problems: ['not-enough', 'owned-by-customer', 'second-person-needed', 'lot-suspected'],
  }),
  surrenderLot: command({
    id: 'surrender-lot',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/surrender',
    access: ['parts-room', 'front-desk', 'manager'],
    versioned: true,
    summary: 'Write down the letter in which the owner gave rejected parts up; from then on they may be destroyed',
    input: z.strictObject({ lotId: id, letter: line, dated: date, givenBy: line }),
    output: changed,
    problems: ['not-a-customers', 'not-rejected', 'already-surrendered', 'letter-in-future'],
  }),
  returnToSupplier: command({
    id: 'return-to-supplier',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/return',
    access: parts,
    versioned: true,
    summary: 'Send pieces back to the supplier against the order line they came on',
    input: z.strictObject({
      lotId: id,
      bin: binCode.optional(),
      quantity: pieces,
      reference: line,
      reason: line,
      /** The order line expects others for them. */
      replaced: z.boolean().default(false),
    }),
    output: held.extend({ movementId: id, order: z.string() }).meta({ id: 'LotReturned' }),
    touches: ['kits', 'purchasing'],
    problems: ['not-enough', 'came-without-order', 'owned-by-customer', 'lot-suspected'],
  }),
  suspectLot: command({
    id: 'suspect-lot',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/suspicion',
    access: ['parts-room', 'technician', 'inspector', 'manager'],
    summary: 'Report a lot as suspected unapproved parts: all of it in bins is held apart and its promises fall away',
    input: z.strictObject({ lotId: id, reason: line }),
    output: held.extend({ elsewhere: z.array(z.string()) }).meta({ id: 'LotSuspected' }),
    touches: ['kits'],
    problems: ['lot-suspected', 'not-stock'],
  }),
  decideSuspicion: command({
    id: 'decide-suspicion',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/suspicion/decision',
    access: ['inspector'],
    versioned: true,
    signs: 'I looked into the suspicion against this lot and decide it as stated, on the basis named.',
    summary: 'Decide a suspicion, not one’s own: cleared goes back to be judged anew, confirmed is rejected',
    input: z.strictObject({
      lotId: id,
      decision: z.enum(['cleared', 'confirmed']),
      basis: line,
      reportedTo: z.string().trim().max(200).default(''),
      signature,
    }),
    output: changed,
    touches: ['kits'],
    problems: ['not-authorised', 'second-person-needed', 'not-suspected'],
  }),
} as const;
