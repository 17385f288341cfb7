import { describe, expect, test, vi } from 'vitest';
import { setTitle } from '../../src/plan/edits';
import type { Migration } from '../../src/plan/migrations';
import { formatRefusal, readPlan, safeFileName, writePlan } from '../../src/plan/schema';
import { createPlanStore } from '../../src/store/plan-store';
import { smallPlan } from '../store/fixtures';
import { createBrowser } from '../store/keeper-rig';

const good = writePlan(smallPlan());

/** Opens a file as the page does, onto a plan that has been edited; answers what became of it. */
function openOnto(input: string | Uint8Array, options?: Parameters<typeof readPlan>[1]) {
  const store = createPlanStore(smallPlan('Open plan'));
  store.edit('rename', setTitle('Open plan, edited'));
  const before = store.getState();
  const answer = readPlan(input, options);
  if (answer.ok) store.open(answer.plan, answer.newer ? 'made by a newer version' : null);
  return { answer, store, kept: store.getState() === before };
}

function sentence(input: string | Uint8Array): string {
  const { answer, kept } = openOnto(input);
  if (answer.ok) return 'accepted';
  expect(kept).toBe(true);
  const text = formatRefusal(answer.error);
  expect(text).not.toMatch(/\n|undefined|\[object/);
  expect(text.length).toBeLessThan(300);
  return text;
}

// biome-ignore lint/suspicious/noExplicitAny: the point is to write what the types forbid.
type Loose = any;
const changed = (change: (plan: Loose) => void): string => {
  const plan = JSON.parse(good);
  change(plan);
  return JSON.stringify(plan);
};

describe('faults 1: files that are no plans', () => {
  test('a plan file cut short anywhere is refused and the open plan stays', () => {
    for (let at = 0; at < good.trimEnd().length; at += 7) {
      expect(sentence(good.slice(0, at)), `cut at ${at}`).toMatch(
        at === 0 ? /the file is empty/ : /the file ends here, in the middle|is not a JSON value/,
      );
    }
  });

  test.each([
    ['empty', '', /the file is empty/],
    ['blank', ' \n\t ', /the file is empty/],
    [
      'a picture',
      new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
      /not text in UTF-8/,
    ],
    ['zeros', new Uint8Array(1000), /not a text file|empty/],
    ['Latin-1', new Uint8Array([0x7b, 0x22, 0xe9, 0x22, 0x7d]), /not text in UTF-8/],
    ['UTF-16', new Uint8Array([0xff, 0xfe, 0x7b, 0x00]), /UTF-16/],
    ['a web page', '<!doctype html>', /a value expected at line 1, column 1/],
    ['a number', '42', /holds 42, not a plan/],
    ['a list', '[]', /a list of 0, not a plan/],
    ['null', 'null', /holds null, not a plan/],
    ['another format', '{"format":"song","version":1}', /format: must be "earpath-plan"/],
    ['no format', '{}', /format: must be "earpath-plan", got nothing/],
    ['a second plan behind', `${good}${good}`, /there is more after the end of the plan/],
  ])('%s is refused with a sentence and the open plan stays', (_, input, expected) => {
    expect(sentence(input)).toMatch(expected);
  });

  test('a slip of the keyboard is found by field, line and column', () => {
    const slip = good.replace('"wheelSide": "left"', '"wheelSide": left');
    expect(sentence(slip)).toBe('cabin.wheelSide: left is not a JSON value (a value expected)');
    const comma = good.replace('"version": 1,', '"version": 1,,');
    expect(sentence(comma)).toMatch(/field name in double quotes expected at line 3, column 16/);
  });
});

describe('faults 2: a plan from a newer version', () => {
  const newer = changed((plan) => {
    plan.version = 7;
    plan.hologram = true;
  });

  test('opens to be looked at, says so, and cannot be changed', () => {
    const { answer, store } = openOnto(newer);
    expect(answer).toMatchObject({ ok: true, newer: true });
    if (answer.ok) expect(answer.warnings[0]).toMatch(/made by a newer version \(7\)/);
    store.edit('rename', setTitle('Overwritten'));
    expect(store.getState().plan.title).toBe('Small plan');
  });

  test('is never kept over', async () => {
    const browser = createBrowser();
    const shelf = await browser.shelf();
    const request = { planId: 'p', title: 'Small plan', text: newer, savedAt: 0, keep: 5 };
    await shelf.write({ ...request, seen: null });
    await shelf.setLastOpen('p');
    const tab = await browser.tab({ plan: smallPlan('Demo') });
    expect(tab.title()).toBe('Small plan');
    tab.planStore.edit('rename', setTitle('Overwritten'));
    await tab.keeper.flush();
    expect(await tab.keeper.rename('p', 'Overwritten')).toMatchObject({ ok: false });
    expect((await shelf.snapshots('p')).map(({ text }) => text)).toEqual([newer]);
  });

  test('that says things this version cannot read is refused as newer', () => {
    const strange = changed((plan) => {
      plan.version = 7;
      plan.options[0].speakers[0].role = 'plasma';
    });
    expect(sentence(strange)).toMatch(
      /^options\[0\]\.speakers\[0\]\.role: the plan was made by a newer version \(7\)/,
    );
  });
});

describe('faults 3: a migration that throws', () => {
  test('the open plan stays and the raw file is offered back', () => {
    const broken: Migration = {
      from: 0,
      title: 'breaks',
      up: () => {
        throw new Error('no speakers to move');
      },
    };
    const old = changed((plan) => {
      plan.version = 0;
    });
    const { answer, kept } = openOnto(old, { migrations: [broken] });
    expect(kept).toBe(true);
    expect(answer).toMatchObject({
      ok: false,
      raw: old,
      error: {
        path: 'version',
        message: 'the plan could not be brought from version 0 to 1: no speakers to move',
      },
    });
  });
});

describe('faults 4: one bad speaker among many', () => {
  const many = changed((plan) => {
    for (let i = 0; i < 30; i++) {
      plan.options[0].speakers.push({ id: `s${i}`, role: 'tweeter', position: [i, 0, 0] });
    }
    plan.options[0].speakers[17].diaphragm = 'large';
  });

  test('the error names it with its path, and nothing is opened by itself', () => {
    expect(sentence(many)).toBe(
      'options[0].speakers[17].diaphragm: must be a number, got the text "large"',
    );
  });

  test('the rest is offered, and is all the others', () => {
    const { answer } = openOnto(many);
    if (answer.ok) throw new Error('expected a refusal');
    expect(answer.withoutBad?.dropped).toHaveLength(1);
    expect(answer.withoutBad?.plan.options[0]?.speakers).toHaveLength(32);
    expect(answer.withoutBad?.plan.options[0]?.speakers.some(({ id }) => id === 's14')).toBe(false);
  });

  test('several bad ones of different kinds are all left out', () => {
    const several = changed((plan) => {
      const [left, right, sub] = plan.options[0].speakers;
      left.diaphragm = -1;
      right.mount.panel = 'nowhere';
      plan.options[0].speakers.push(
        { ...sub },
        { id: 'last', role: 'centre', position: [1, 2, 3] },
      );
    });
    const { answer } = openOnto(several);
    if (answer.ok) throw new Error('expected a refusal');
    expect(answer.withoutBad?.plan.options[0]?.speakers.map(({ id }) => id)).toEqual([
      'subwoofer',
      'last',
    ]);
    expect(answer.withoutBad?.dropped).toHaveLength(3);
  });

  test('nothing is offered when something else is wrong as well', () => {
    const both = changed((plan) => {
      plan.options[0].speakers[0].diaphragm = -1;
      plan.air.temperatureC = 'warm';
    });
    const { answer } = openOnto(both);
    expect(answer.ok || answer.withoutBad).toBeUndefined();
  });
});

describe('faults 5: numbers that are none', () => {
  const speaker = 'options[0].speakers[0]';
  test.each<[string, (plan: Loose) => void]>([
    [
      `${speaker}.mount.u: must be between 0 and 1, got 1.4`,
      (p) => {
        p.options[0].speakers[0].mount.u = 1.4;
      },
    ],
    [
      `${speaker}.mount.v: must be a number, got the text "0.5"`,
      (p) => {
        p.options[0].speakers[0].mount.v = '0.5';
      },
    ],
    [
      `${speaker}.mount.v: must be a number, got null`,
      (p) => {
        p.options[0].speakers[0].mount.v = Number.NaN; // JSON.stringify makes it null
      },
    ],
    [
      `${speaker}.diaphragm: must be more than 0 and at most 1000, got -25`,
      (p) => {
        p.options[0].speakers[0].diaphragm = -25;
      },
    ],
    [
      `${speaker}.body.depth: must be more than 0 and at most 1000, got 0`,
      (p) => {
        p.options[0].speakers[0].body = { flange: 45, cutout: 40, depth: 0 };
      },
    ],
    [
      'options[0].speakers[2].position[1]: must be between -100000 and 100000, got 1e+308',
      (p) => {
        p.options[0].speakers[2].position[1] = 1e308;
      },
    ],
    [
      'options[0].speakers[2].position[1]: must be between -100000 and 100000, got -1e+308',
      (p) => {
        p.options[0].speakers[2].position[1] = -1e308;
      },
    ],
    [
      'seats[0].earSpacing: must be more than 0 and at most 1000, got -152',
      (p) => {
        p.seats[0].earSpacing = -152;
      },
    ],
    [
      'obstacles[0].size[2]: must be between 0 and 100000, got -1',
      (p) => {
        p.obstacles = [{ id: 'o', shape: 'box', center: [0, 0, 0], size: [1, 1, -1] }];
      },
    ],
    [
      'alignment.sampleRateHz: must be between 1000 and 10000000, got 0',
      (p) => {
        p.alignment.sampleRateHz = 0;
      },
    ],
    [
      'cabin.panels[0].reflectivity: must be between 0 and 1, got 2',
      (p) => {
        p.cabin.panels[0].reflectivity = 2;
      },
    ],
    [
      'air.temperatureC: must be a number, got true',
      (p) => {
        p.air.temperatureC = true;
      },
    ],
  ])('%s', (expected, change) => {
    expect(sentence(changed(change))).toBe(expected);
  });

  test('NaN, Infinity and 1e999 written into the file are refused with their path', () => {
    const put = (value: string) => good.replace('[2000, 0, 200]', `[2000, ${value}, 200]`);
    const at = 'options[0].speakers[2].position[1]';
    expect(sentence(put('NaN'))).toBe(`${at}: NaN is not a JSON value (a value expected)`);
    expect(sentence(put('-Infinity'))).toBe(
      `${at}: -Infinity is not a JSON value (a value expected)`,
    );
    expect(sentence(put('1e999'))).toMatch(/position\[1\]: .*got a number too large to hold/);
  });
});

describe('faults 6: names used twice, names that lead nowhere', () => {
  test.each<[string, (plan: Loose) => void]>([
    [
      'options[0].speakers[1].id: the name "midrange-left" is already used by options[0].speakers[0]',
      (p) => {
        p.options[0].speakers[1].id = 'midrange-left';
      },
    ],
    [
      'seats[1].id: the name "front-left" is already used by seats[0]',
      (p) => {
        p.seats[1].id = 'front-left';
      },
    ],
    [
      'options[1].id: the name "a" is already used by options[0]',
      (p) => {
        p.options.push({ id: 'a', speakers: [] });
      },
    ],
    [
      'cabin.panels[1].id: the name "board-left" is already used by cabin.panels[0]',
      (p) => {
        p.cabin.panels[1].id = 'board-left';
      },
    ],
    [
      'options[0].speakers[0].mount.panel: there is no panel "attic" in this cabin (speaker "midrange-left")',
      (p) => {
        p.options[0].speakers[0].mount.panel = 'attic';
      },
    ],
    [
      'options[0].speakers[2].aim.seat: there is no seat "sofa" in this plan (speaker "subwoofer")',
      (p) => {
        p.options[0].speakers[2].aim = { kind: 'seat', seat: 'sofa' };
      },
    ],
  ])('%s', (expected, change) => {
    expect(sentence(changed(change))).toBe(expected);
  });

  test('a template that does not exist is refused by its name, with those there are', () => {
    const text = changed((p) => {
      p.cabin.template = 'hovercraft';
    });
    expect(sentence(text)).toMatch(/^cabin\.template: there is no template "hovercraft"/);
  });

  test('the same id in two options is fine: they are compared, not mixed', () => {
    const text = changed((p) => {
      p.options.push({ ...p.options[0], id: 'b' });
    });
    expect(sentence(text)).toBe('accepted');
  });
});

describe('faults 7: files meant to do harm', () => {
  test.each(['__proto__', 'constructor', 'prototype'])('the key %s is refused', (key) => {
    const escaped = `\\u00${key.charCodeAt(0).toString(16)}${key.slice(1)}`;
    for (const spelt of [key, escaped]) {
      const text = good.replace('"role":', `"${spelt}": {"admin": true}, "role":`);
      expect(sentence(text)).toBe(
        `options[0].speakers[0].${key}: the name "${key}" is not allowed for a field`,
      );
    }
    expect(({} as Record<string, unknown>).admin).toBeUndefined();
  });

  test('JSON nested 100,000 deep is refused before it is parsed', () => {
    const parse = vi.spyOn(JSON, 'parse');
    expect(sentence(good)).toBe('accepted');
    expect(parse).toHaveBeenCalled();
    parse.mockClear();
    for (const [open, close] of [
      ['[', ']'],
      ['{"a":', '}'],
    ] as const) {
      const deep = open.repeat(100_000) + close.repeat(100_000);
      expect(sentence(deep)).toBe('the file is nested more than 64 levels deep');
    }
    expect(parse).not.toHaveBeenCalled();
    parse.mockRestore();
  });

  test('brackets inside a text are no nesting', () => {
    const text = changed((p) => {
      p.title = `${'[{"'.repeat(500)}\\`;
    });
    expect(sentence(text)).toBe('accepted');
  });

  test('200 MB are refused before they are read', () => {
    const parse = vi.spyOn(JSON, 'parse');
    const decode = vi.spyOn(TextDecoder.prototype, 'decode');
    expect(sentence(new TextEncoder().encode(good))).toBe('accepted');
    expect(parse).toHaveBeenCalled();
    expect(decode).toHaveBeenCalled();
    parse.mockClear();
    decode.mockClear();
    expect(sentence(new Uint8Array(200_000_000))).toBe(
      'the file is 200 MB long; plans of more than 50 MB are not read',
    );
    expect(sentence(' '.repeat(200_000_000))).toMatch(/200 MB long/);
    expect(parse).not.toHaveBeenCalled();
    expect(decode).not.toHaveBeenCalled();
    parse.mockRestore();
    decode.mockRestore();
  });
});

describe('faults 8: names that are not tame', () => {
  const names = [
    '<img src=x onerror="alert(1)">',
    '\u202Egnp.exe',
    '👩‍🔧 Käfer 車',
    'x'.repeat(10_000),
    '../../etc/x',
    'C:\\con.txt',
    '   ',
    '\u0000\u0007bell',
    '.hidden',
    'CON',
    '\ud800',
  ];

  test.each(names)('%j comes through as the same text', (name) => {
    const plan = smallPlan(name);
    const answer = readPlan(writePlan(plan));
    expect(answer.ok && answer.plan.title).toBe(name);
  });

  test.each(names)('%j makes a file name any system takes', (name) => {
    const file = safeFileName(name);
    expect(file).not.toBe('');
    expect(file).not.toMatch(/[\\/:*?"<>|]|\p{C}|^[. ]|[. ]$|\.\./u);
    expect(new TextEncoder().encode(file).length).toBeLessThan(250);
    expect(file.toLowerCase()).not.toBe('con');
  });

  test('a tame name stays as it is', () => {
    expect(safeFileName('Anna’s estate, option 2')).toBe('Anna’s estate, option 2');
  });
});
