import { describe, expect, test } from '@jest/globals';
import { close, type KitMovement, type Place, type Required } from './index.ts';

const move = (part: string, quantity: number, route: `${Place}>${Place}`, position?: string): KitMovement => {
  const [from, to] = route.split('>') as [Place, Place];
  return position === undefined ? { part, quantity, from, to } : { part, quantity, from, to, position };
};
const whole = { closed: true, leftOver: [], missing: [], unexpected: [] };

describe('the worked example: a new seal at the hub, the old spring reused', () => {
  const required: Required[] = [
    { part: 'SEAL', quantity: 1, position: 'hub', source: 'new' },
    { part: 'SPRING', quantity: 1, source: 'reused' },
  ];
  const teardown = [
    move('SEAL', 1, 'unit>rack', 'hub'),
    move('SPRING', 1, 'unit>rack'),
    move('SEAL', 2, 'stock>tray'),
    move('SEAL', 1, 'tray>unit', 'hub'),
    move('SEAL', 1, 'rack>scrap'),
  ];

  test('one new seal and the reused spring left over: each is named', () => {
    expect(close({ required, movements: teardown })).toEqual({
      closed: false,
      missing: [{ part: 'SPRING', quantity: 1 }],
      unexpected: [],
      leftOver: [
        { part: 'SEAL', quantity: 1, place: 'tray' },
        { part: 'SPRING', quantity: 1, place: 'rack' },
      ],
    });
  });

  test('spring put back, spare seal returned: closed', () => {
    const movements = [...teardown, move('SPRING', 1, 'rack>unit'), move('SEAL', 1, 'tray>stock')];
    expect(close({ required, movements })).toEqual(whole);
  });
});

describe('source', () => {
  const newSeal: Required[] = [{ part: 'SEAL', quantity: 1, position: 'hub', source: 'new' }];

  test('the old seal put back where a new one is required: the old is unexpected, the new missing', () => {
    const movements = [move('SEAL', 1, 'unit>rack', 'hub'), move('SEAL', 1, 'rack>unit', 'hub')];
    expect(close({ required: newSeal, movements })).toMatchObject({
      closed: false,
      missing: [{ part: 'SEAL', quantity: 1, position: 'hub' }],
      unexpected: [{ part: 'SEAL', quantity: 1 }],
      leftOver: [],
    });
  });

  test('a new spring where the old one must be reused is unexpected too', () => {
    const required: Required[] = [{ part: 'SPRING', quantity: 1, source: 'reused' }];
    const movements = [
      move('SPRING', 1, 'unit>scrap'),
      move('SPRING', 1, 'stock>tray'),
      move('SPRING', 1, 'tray>unit'),
    ];
    expect(close({ required, movements })).toMatchObject({ missing: [{ quantity: 1 }], unexpected: [{ quantity: 1 }] });
  });

  test('an old part does not become new by way of the tray', () => {
    for (const detour of [
      [move('SEAL', 1, 'unit>tray', 'hub')],
      [move('SEAL', 1, 'unit>rack', 'hub'), move('SEAL', 1, 'rack>tray')],
      [move('SEAL', 1, 'unit>scrap', 'hub'), move('SEAL', 1, 'scrap>tray')],
    ])
      expect(close({ required: newSeal, movements: [...detour, move('SEAL', 1, 'tray>unit', 'hub')] }).closed).toBe(
        false,
      );
  });

  test('an old part in the tray by mistake, taken out again, does not stain the new ones beside it', () => {
    const movements = [
      move('SEAL', 1, 'stock>tray'),
      move('SEAL', 1, 'unit>tray', 'hub'),
      move('SEAL', 1, 'tray>scrap'),
      move('SEAL', 1, 'tray>unit', 'hub'),
    ];
    expect(close({ required: newSeal, movements })).toEqual(whole);
  });

  test.each<[string, KitMovement[], boolean]>([
    ['the old one scrapped from the tray', [move('SEAL', 1, 'tray>scrap'), move('SEAL', 1, 'tray>unit', 'hub')], true],
    ['the new one returned to stock', [move('SEAL', 1, 'tray>stock'), move('SEAL', 1, 'tray>unit', 'hub')], false],
    [
      'one put in while the old one lies beside it',
      [move('SEAL', 1, 'tray>unit', 'hub'), move('SEAL', 1, 'tray>scrap')],
      false,
    ],
  ])('of an old and a new seal in one tray: %s', (_, then, closed) => {
    const old = move('SEAL', 1, 'unit>tray', 'hub');
    const fresh = move('SEAL', 1, 'stock>tray');
    for (const mixed of [
      [old, fresh],
      [fresh, old],
    ])
      expect(close({ required: newSeal, movements: [...mixed, ...then] }).closed).toBe(closed);
  });

  test('a wrong scan undone to the tray leaves the part new', () => {
    const movements = [
      move('SEAL', 1, 'stock>tray'),
      move('SEAL', 1, 'tray>unit', 'shaft'),
      move('SEAL', 1, 'unit>tray', 'shaft'),
      move('SEAL', 1, 'tray>unit', 'hub'),
    ];
    expect(close({ required: newSeal, movements })).toEqual(whole);
  });

  test('a new seal taken off after a failed test is replaced by a fresh one', () => {
    const movements = [
      move('SEAL', 1, 'unit>rack', 'hub'),
      move('SEAL', 1, 'rack>scrap'),
      move('SEAL', 1, 'stock>tray'),
      move('SEAL', 1, 'tray>unit', 'hub'),
      move('SEAL', 1, 'unit>scrap', 'hub'),
    ];
    expect(close({ required: newSeal, movements })).toMatchObject({ closed: false, missing: [{ quantity: 1 }] });
    const again = [...movements, move('SEAL', 1, 'stock>tray'), move('SEAL', 1, 'tray>unit', 'hub')];
    expect(close({ required: newSeal, movements: again })).toEqual(whole);
  });

  test('a part that reached the unit past tray and rack meets only a line that takes any source', () => {
    const movements = [move('SEAL', 1, 'stock>unit', 'hub')];
    expect(close({ required: newSeal, movements }).closed).toBe(false);
    expect(close({ required: [{ part: 'SEAL', quantity: 1, position: 'hub' }], movements })).toEqual(whole);
  });
});

describe('positions', () => {
  const bothBlades: Required[] = [
    { part: 'BEARING', quantity: 1, position: 'blade-1' },
    { part: 'BEARING', quantity: 1, position: 'blade-2' },
  ];

  test('two at one blade and none at the other: the right total is not enough', () => {
    const movements = [
      move('BEARING', 2, 'stock>tray'),
      move('BEARING', 1, 'tray>unit', 'blade-1'),
      move('BEARING', 1, 'tray>unit', 'blade-1'),
    ];
    expect(close({ required: bothBlades, movements })).toEqual({
      closed: false,
      leftOver: [],
      missing: [{ part: 'BEARING', quantity: 1, position: 'blade-2' }],
      unexpected: [{ part: 'BEARING', quantity: 1 }],
    });
  });

  test('pieces put in without a position prove no position', () => {
    const movements = [move('BEARING', 2, 'stock>tray'), move('BEARING', 2, 'tray>unit')];
    expect(close({ required: bothBlades, movements })).toMatchObject({
      missing: [{ position: 'blade-1' }, { position: 'blade-2' }],
      unexpected: [{ quantity: 2 }],
    });
  });

  test('a line without position is met wherever the pieces went', () => {
    const movements = [
      move('WASHER', 3, 'stock>tray'),
      move('WASHER', 2, 'tray>unit', 'blade-1'),
      move('WASHER', 1, 'tray>unit'),
    ];
    expect(close({ required: [{ part: 'WASHER', quantity: 3 }], movements })).toEqual(whole);
  });

  test('a piece put in without a position may be the one taken off a position', () => {
    const movements = [
      move('WASHER', 2, 'stock>tray'),
      move('WASHER', 2, 'tray>unit'),
      move('WASHER', 1, 'unit>scrap', 'blade-1'),
    ];
    expect(close({ required: [{ part: 'WASHER', quantity: 2 }], movements }).missing).toEqual([
      { part: 'WASHER', quantity: 1 },
    ]);
  });

  test('a line that takes any position leaves the positions to the lines that name them', () => {
    const movements = [
      move('BEARING', 2, 'stock>tray'),
      move('BEARING', 1, 'tray>unit', 'blade-1'),
      move('BEARING', 1, 'tray>unit', 'shaft'),
    ];
    const required: Required[] = [
      { part: 'BEARING', quantity: 1 },
      { part: 'BEARING', quantity: 1, position: 'blade-1' },
    ];
    expect(close({ required, movements })).toEqual(whole);
  });

  test('swapping one blade after the other closes when positions are recorded', () => {
    const swap = (blade: string) => [
      move('BEARING', 1, 'unit>rack', blade),
      move('BEARING', 1, 'tray>unit', blade),
      move('BEARING', 1, 'rack>scrap'),
    ];
    const movements = [move('BEARING', 2, 'stock>tray'), ...swap('blade-1'), ...swap('blade-2')];
    expect(close({ required: bothBlades, movements })).toEqual(whole);
  });

  test('a removal without a position never leaves a piece counted that may be gone', () => {
    const movements = [
      move('BEARING', 2, 'stock>tray'),
      move('BEARING', 1, 'tray>unit', 'blade-1'),
      move('BEARING', 1, 'tray>unit', 'blade-2'),
      move('BEARING', 1, 'unit>scrap'),
    ];
    expect(close({ required: bothBlades, movements })).toMatchObject({ closed: false, missing: [{ quantity: 1 }] });
  });
});

describe('what the unit held before', () => {
  test('a line for which nothing was moved is missing: silence is no proof', () => {
    expect(close({ required: [{ part: 'NUT', quantity: 1 }], movements: [] })).toMatchObject({
      closed: false,
      missing: [{ part: 'NUT', quantity: 1 }],
    });
  });

  test('a part taken off and scrapped, on no line, leaves nothing behind', () => {
    expect(close({ required: [], movements: [move('CLAMP', 2, 'unit>rack'), move('CLAMP', 2, 'rack>scrap')] })).toEqual(
      whole,
    );
  });

  test('a part taken off and handed back to the customer is not left over', () => {
    expect(
      close({ required: [], movements: [move('BOOT', 1, 'unit>rack'), move('BOOT', 1, 'rack>customer')] }),
    ).toEqual(whole);
  });

  test('a new part on no line is unexpected', () => {
    const movements = [move('BOLT', 3, 'stock>tray'), move('BOLT', 3, 'tray>unit')];
    expect(close({ required: [], movements })).toMatchObject({
      closed: false,
      unexpected: [{ part: 'BOLT', quantity: 3 }],
    });
  });
});

describe('as-needed lines and alternates', () => {
  const wire: Required[] = [{ part: 'WIRE', quantity: 900, minimum: 300 }];
  test.each([
    [299, { missing: [{ part: 'WIRE', quantity: 1 }], unexpected: [] }],
    [300, { closed: true }],
    [900, { closed: true }],
    [901, { missing: [], unexpected: [{ part: 'WIRE', quantity: 1 }] }],
  ])('%i mm of safety wire against 300 to 900', (used, expected) => {
    const movements = [move('WIRE', used, 'stock>tray'), move('WIRE', used, 'tray>unit')];
    expect(close({ required: wire, movements })).toMatchObject(expected);
  });

  test('unused wire goes back to stock; the tray need not be used up', () => {
    const used = [move('WIRE', 900, 'stock>tray'), move('WIRE', 400, 'tray>unit')];
    expect(close({ required: wire, movements: used }).leftOver).toEqual([
      { part: 'WIRE', quantity: 500, place: 'tray' },
    ]);
    expect(close({ required: wire, movements: [...used, move('WIRE', 500, 'tray>stock')] })).toEqual(whole);
  });

  test('a minimum of zero needs nothing', () => {
    expect(close({ required: [{ part: 'SHIM', quantity: 4, minimum: 0 }], movements: [] })).toEqual(whole);
  });

  test('an alternate fills its line, and the order of lines does not matter', () => {
    const loose: Required = { part: 'A', quantity: 1, acceptable: ['B'] };
    const strict: Required = { part: 'B', quantity: 1 };
    const put = (part: string) => [move(part, 1, 'stock>tray'), move(part, 1, 'tray>unit')];
    for (const required of [
      [loose, strict],
      [strict, loose],
    ]) {
      expect(close({ required, movements: [...put('B'), ...put('A')] })).toEqual(whole);
      expect(close({ required, movements: [...put('B'), ...put('B')] })).toEqual(whole);
      expect(close({ required, movements: [...put('A'), ...put('A')] })).toMatchObject({
        missing: [{ part: 'B', quantity: 1 }],
        unexpected: [{ part: 'A', quantity: 1 }],
      });
    }
  });

  test('of a part and its alternate both put in, the alternate is the one too many', () => {
    const movements = [
      move('B', 1, 'stock>tray'),
      move('B', 1, 'tray>unit'),
      move('A', 1, 'stock>tray'),
      move('A', 1, 'tray>unit'),
    ];
    expect(close({ required: [{ part: 'A', quantity: 1, acceptable: ['B'] }], movements })).toMatchObject({
      missing: [],
      unexpected: [{ part: 'B', quantity: 1 }],
    });
  });
});
