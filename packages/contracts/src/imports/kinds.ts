import { z } from 'zod';
import { type FieldGiven, type ImportField, needed, open } from './fields.ts';

/** What a table can bring in, all by one mechanism. */
export const importKinds = ['parts', 'opening-stock', 'prices', 'offers', 'kit-lists'] as const;
export const importKind = z.enum(importKinds).meta({ id: 'ImportKind' });
export type ImportKind = (typeof importKinds)[number];

export const importTitles: Record<ImportKind, string> = {
  parts: 'Part numbers',
  'opening-stock': 'Opening stock',
  prices: 'Prices of part numbers',
  offers: 'Suppliers’ price lists',
  'kit-lists': 'Kit lists',
};

/** Lists too long for a page, as whole files. */
export const exportLists = [
  'parts',
  'stock',
  'lots',
  'movements',
  'orders',
  'offers',
  'suppliers',
  'kit-lines',
  'counts',
] as const;
export type ExportList = (typeof exportLists)[number];

export const exportTitles: Record<ExportList, string> = {
  parts: 'Part numbers',
  stock: 'Stock by part number and bin',
  lots: 'Lots',
  movements: 'Every movement',
  orders: 'Purchase order lines',
  offers: 'Suppliers’ offers, a line for each price',
  suppliers: 'Suppliers',
  'kit-lines': 'Lines of every kit',
  counts: 'Counts',
};

const number: FieldGiven = [
  'number',
  'part number',
  'Up to 60 characters',
  'Q301-17',
  ['part', 'part no', 'p/n', 'number'],
];
const price: FieldGiven = [
  'unitPrice',
  'unit price',
  'A decimal number with a point, of one issue unit',
  '4.25',
  ['price', 'cost', 'unit cost', 'price each'],
];
const packSize: FieldGiven = ['packSize', 'pack size', 'Whole number', '10', ['pack', 'pack quantity', 'per pack']];
const leadTime: FieldGiven = ['leadTimeDays', 'lead time days', 'Whole days', '21', ['lead time', 'lead days']];
const supplier: FieldGiven = [
  'supplier',
  'supplier code',
  'The code of a supplier on record',
  'NORTHBAY',
  ['supplier'],
];
const bin: FieldGiven = ['bin', 'bin', 'The code of a bin on record', 'A-01', ['home bin', 'location', 'shelf']];

/** The columns of each kind, in the template’s order. What a template does not name, a table need not bring. */
export const importFields: Record<ImportKind, readonly ImportField[]> = {
  parts: [
    needed(number),
    open(['maker', 'maker', 'Needed for a new part', 'Quillon', ['manufacturer', 'make']]),
    open(['description', 'description', 'Needed for a new part', 'packing washer', ['name', 'title']]),
    open([
      'class',
      'class',
      'mandatory, hardware, seal, consumable, serialized or raw; needed for a new part',
      'hardware',
      ['part class'],
    ]),
    open(['issueUnit', 'issue unit', 'piece, inch, gram, millilitre or sheet', 'piece', ['unit', 'uom']]),
    open(packSize),
    open([
      'certificateRequired',
      'certificate required',
      'yes or no; yes where nothing stands',
      'yes',
      ['certificate needed'],
    ]),
    open([
      'serialised',
      'serialized',
      'yes or no; where nothing stands, yes for the class serialized',
      'no',
      ['serialised', 'serial tracked'],
    ]),
    open(['shelfLifeMonths', 'shelf life months', 'Whole months; empty where it does not age', '', ['shelf life']]),
    open([
      'minimumDaysAtBuild',
      'minimum days at build',
      'Days of shelf life that must be left on the build day',
      '0',
      ['min days at build'],
    ]),
    open(leadTime),
    open([price[0], price[1], 'A decimal number with a point; needed for a new part', '4.25', price[4] ?? []]),
    open(supplier),
    open(['homeBin', 'home bin', 'The code of a bin on record', 'A-01', ['bin', 'location', 'shelf']]),
  ],
  'opening-stock': [
    needed(number),
    needed(['quantity', 'quantity', 'Whole issue units, at least one', '40', ['qty', 'on hand', 'count']]),
    needed(bin),
    needed(['supplierLot', 'supplier lot', 'As on the package', 'L-2207', ['lot', 'lot number', 'batch']]),
    open([
      'sourceClass',
      'source',
      'maker-new, approved-manufacturer or used-serviceable; maker-new where nothing stands',
      'maker-new',
      ['source class'],
    ]),
    open([
      'certificate',
      'certificate',
      'Its number; a part that needs one is not accepted without',
      'C-1180',
      ['certificate number', 'cert'],
    ]),
    open([
      'cureDate',
      'cure date',
      'Needed for a part with a shelf life: 2026-03-31 or a quarter such as 1Q26',
      '',
      ['cured', 'cure'],
    ]),
    open(['serial', 'serial', 'Needed for a serialized part, one row each', '', ['serial number', 's/n']]),
    open(price),
  ],
  prices: [needed(number), needed(price), open(supplier), open(packSize), open(leadTime)],
  // A line for each price: rows of one supplier and part are one offer, which takes the place of the one before whole.
  offers: [
    needed(supplier),
    needed(number),
    open([
      'supplierPartNumber',
      'supplier part number',
      'As the supplier calls it, up to 60 characters',
      'NB-4417',
      ['supplier part', 'their part number', 'vendor part number'],
    ]),
    needed(price),
    open([
      'from',
      'from quantity',
      'From how many pieces this price holds; 1 where nothing stands',
      '1',
      ['break', 'price break', 'from'],
    ]),
    open(packSize),
    open([
      'minimum',
      'least quantity',
      'The fewest pieces they sell',
      '10',
      ['minimum order quantity', 'moq', 'minimum', 'least'],
    ]),
    open(leadTime),
    open(['preference', 'preference', '1 is asked first, 9 last', '1', ['rank']]),
    open(['validFrom', 'valid from', 'A date such as 2026-11-01', '', ['from date', 'effective']]),
    open(['validUntil', 'valid until', 'The last day, such as 2027-12-31', '', ['valid to', 'until date']]),
  ],
  'kit-lists': [
    needed(['manual', 'manual', 'The number of a manual on record', 'QM-301', ['manual number']]),
    needed(['model', 'model', 'A designation of that manual', 'Q-301', ['designation']]),
    needed(number),
    needed(['position', 'position', 'Where in the unit', 'blade retention', ['place', 'item']]),
    needed([
      'scopes',
      'scopes',
      'One or more, parted by a semicolon: overhaul; reseal; …',
      'overhaul; reseal',
      ['scope'],
    ]),
    open(['per', 'per', 'unit or blade; unit where nothing stands', 'blade', []]),
    needed(['quantity', 'quantity', 'Whole issue units, at least one', '2', ['qty']]),
    open(['minimum', 'minimum', 'Only for what is used as needed', '', ['least']]),
    needed(['source', 'source', 'new, reused or any', 'new', []]),
    open(['serialFrom', 'serial from', 'First serial it is for', '', ['from serial']]),
    open(['serialTo', 'serial to', 'Last serial it is for', '', ['to serial']]),
  ],
};

/** The most rows and columns of one table, and the most characters of one cell. */
export const importLimits = { rows: 20_000, columns: 40, cell: 400 } as const;
