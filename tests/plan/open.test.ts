import { describe, expect, it } from 'vitest';
import { openPlan } from '../../src/plan/open.ts';
import { changed, type Raw, reasonFor, withAt } from './support/hostile.ts';

describe('openPlan refuses a value of the wrong kind, at every level', () => {
  const cases: [path: string, json: string, code: string][] = [
    ['id', '7', 'wrongType'],
    ['id', '""', 'badId'],
    ['id', '"a b"', 'badId'],
    ['id', '"../../x"', 'badId'],
    ['id', `"${'x'.repeat(41)}"`, 'badId'],
    ['name', 'null', 'wrongType'],
    ['name', '["a"]', 'wrongType'],
    ['name', `"${'x'.repeat(201)}"`, 'textTooLong'],
    ['name', '"\\ud800"', 'brokenText'],
    ['name', '"x\\udc00y"', 'brokenText'],
    ['settings', 'null', 'wrongType'],
    ['settings', '[]', 'missingKey'],
    ['settings.systemV', '24', 'notAllowed'],
    ['settings.ruleSet', '"none"', 'notAllowed'],
    ['settings.stock', '[]', 'listTooShort'],
    ['settings.stock.0', '"sae:5"', 'unknownGauge'],
    ['settings.stock.0', '"four"', 'badGauge'],
    ['settings.linkFamilies', '{"length":1}', 'wrongType'],
    ['settings.restV', '12.6', 'wrongType'],
    ['settings.restV.value', '1e999', 'notFinite'],
    ['settings.restV.value', '-1e999', 'notFinite'],
    ['settings.restV.value', '"12.6"', 'wrongType'],
    ['settings.restV.value', '8', 'tooSmall'],
    ['settings.restV.value', '1e308', 'tooBig'],
    ['settings.restV.origin', '"guessed"', 'notAllowed'],
    ['settings.restV.source', 'null', 'wrongType'],
    ['sheets', '[]', 'listTooShort'],
    ['sheets.0.outline', '"van"', 'wrongType'],
    ['sheets.0.outline.kind', '"boat"', 'notAllowed'],
    ['sheets.0.mirrored', '0', 'wrongType'],
    ['fittings', '{}', 'wrongType'],
    ['fittings', `[${'0,'.repeat(2000)}0]`, 'wrongType'],
    ['fittings.0', 'null', 'wrongType'],
    ['fittings.0', '[]', 'missingKey'],
    ['fittings.0.kind', '"capacitor"', 'notAllowed'],
    ['fittings.0.kind', 'null', 'notAllowed'],
    ['fittings.0.at', '[0.5, 1.4]', 'missingKey'],
    ['fittings.0.at.xM', 'true', 'wrongType'],
    ['fittings.0.at.xM', '100.0001', 'tooBig'],
    ['fittings.0.strap.lengthM.value', '{}', 'wrongType'],
    ['fittings.1.link.ratingA', '"big"', 'notAllowed'],
    ['fittings.1.link.ratingA', '0', 'tooSmall'],
    ['fittings.3.outputs', '[]', 'listTooShort'],
    ['fittings.3.outputs.0.terminal', '"out0"', 'badTerminal'],
    ['fittings.3.outputs.0.terminal', '"out2"', 'duplicateTerminal'],
    ['fittings.4.onboardFusesA', '[30, null]', 'wrongType'],
    ['runs.0.kind', '"signal"', 'notAllowed'],
    ['runs.0.from', '"battery.positive"', 'wrongType'],
    ['runs.0.bends', '[{"xM":1}]', 'missingKey'],
    ['runs.0.tapedM', '0', 'tooSmall'],
    ['runs.0.riseM', '-0.1', 'tooSmall'],
    ['runs.0.conductor.size', '"sae:5"', 'unknownGauge'],
    ['runs.0.conductor.size', '4', 'notAllowed'],
    ['runs.0.conductor.material.value', '"gold"', 'notAllowed'],
    ['runs.0.conductor.insulationC.value', '100', 'notAllowed'],
    ['runs.0.nearerImpossible', 'false', 'wrongType'],
    ['areas', 'null', 'wrongType'],
    ['pictures', '[{}]', 'missingKey'],
  ];

  it.each(cases)('%s = %s: %s', (path, json, code) => {
    const reason = reasonFor(withAt(path, json));
    expect(reason.code).toBe(code);
    expect(reason.where).not.toBe('');
  });

  it('501 bends and 2,001 fittings are too many', () => {
    const bends = JSON.stringify(Array.from({ length: 501 }, () => ({ xM: 1, yM: 1 })));
    expect(reasonFor(withAt('runs.0.bends', bends))).toMatchObject({ code: 'listTooLong', params: { limit: 500 } });
    const ground = { id: 'x', name: '', sheetId: 'sheet', at: { xM: 1, yM: 1 }, zone: 'auto', locked: false };
    const many = Array.from({ length: 2001 }, (_, index) => ({ ...ground, id: `g${index}`, kind: 'ground' }));
    const reason = reasonFor(withAt('fittings', JSON.stringify(many)));
    expect(reason).toMatchObject({ code: 'listTooLong', where: 'fittings', params: { limit: 2000 } });
  });

  it.each([
    ['at the top', 'author', ''],
    ['of a setting', 'settings.restV.unit', ''],
    ['of a fitting', 'fittings.1.colour', 'Name of fuse'],
    ['of a run', 'runs.0.price', 'Name of feed'],
    ['named __proto__', 'fittings.1.__proto__', 'Name of fuse'],
    ['named constructor', 'fittings.1.constructor', 'Name of fuse'],
    ['named toString', 'settings.toString', ''],
    ['named hasOwnProperty', 'runs.0.conductor.hasOwnProperty', 'Name of feed'],
  ])('a key that no plan has, %s', (_, path, name) => {
    const keys = path.split('.');
    const last = keys.pop() ?? '';
    const hostile = changed((document) => {
      const owner = keys.reduce((part, key) => part[key] ?? {}, document);
      owner['\u0000here'] = { locked: true } as unknown as Raw;
    }).replace(JSON.stringify('\u0000here'), JSON.stringify(last));
    const where = path.replace(/\.(\d+)/g, '[$1]');
    expect(reasonFor(hostile)).toEqual({
      code: 'unknownKey',
      where,
      params: { key: last, ...(name === '' ? {} : { name }) },
    });
    expect(({} as { locked?: boolean }).locked).toBeUndefined();
  });

  it('a key that every plan has, left out, at every level', () => {
    const missing = (where: string) => {
      const keys = where.split('.');
      const last = keys.pop() ?? '';
      return reasonFor(
        changed((document) => {
          const owner = keys.reduce((part, key) => part[key] ?? {}, document);
          delete owner[last];
        }),
      );
    };
    for (const path of [
      ...['name', 'settings', 'runs', 'pictures', 'settings.duty', 'settings.duty.value', 'sheets.0.outline.bayM'],
      ...['fittings.0.kind', 'fittings.0.at.yM', 'fittings.4.regulated', 'runs.0.to', 'runs.0.conductor.size'],
    ]) {
      const where = path.replace(/\.(\d+)/g, '[$1]');
      expect(missing(path), path).toMatchObject({ code: 'missingKey', where, params: { key: path.split('.').at(-1) } });
    }
  });
});

describe('openPlan says where, and by which name', () => {
  it('a fitting: place in the file, its name, what was found', () => {
    expect(reasonFor(withAt('fittings.3.at.xM', '1e999'))).toEqual({
      code: 'notFinite',
      where: 'fittings[3].at.xM',
      params: { found: 'Infinity', name: 'Name of block' },
    });
  });

  it('what would have been allowed, as a plain list', () => {
    expect(reasonFor(withAt('runs.2.kind', '"signal"')).params).toEqual({
      expected: 'power, ground, remote',
      found: '"signal"',
      name: 'Name of long',
    });
  });

  it('a hostile megabyte is cut short, and half characters are made whole', () => {
    const reason = reasonFor(withAt('runs.2.kind', `"${'😀\\u0007\\udc00'.repeat(100_000)}"`));
    expect(String(reason.params.found).length).toBeLessThan(70);
    expect(String(reason.params.found)).not.toMatch(/\p{Surrogate}|\p{Control}/u);
  });
});

describe('openPlan refuses parts that do not fit each other', () => {
  it.each([
    ['two fittings', 'fittings.1.id', '"battery"', { where: 'fittings[1].id', params: { first: 'fittings[0].id' } }],
    ['a run and a fitting', 'runs.0.id', '"bolt"', { where: 'runs[0].id', params: { first: 'fittings[6].id' } }],
    ['the plan and a sheet', 'sheets.0.id', '"van"', { where: 'sheets[0].id', params: { id: 'van', first: 'id' } }],
  ])('one id for %s', (_, path, json, reason) => {
    expect(reasonFor(withAt(path, json))).toMatchObject({ code: 'duplicateId', ...reason });
  });

  it.each([
    ['fittings.5.sheetId', '"gone"', 'unknownSheet', { id: 'gone', name: 'Name of rear' }],
    ['runs.5.sheetId', '"gone"', 'unknownSheet', { id: 'gone', name: 'Name of frontGround' }],
    ['runs.0.from.fittingId', '"gone"', 'unknownFitting', { id: 'gone', name: 'Name of feed' }],
    ['runs.0.to.fittingId', '"sheet"', 'unknownFitting', { id: 'sheet', name: 'Name of feed' }],
    [
      'runs.0.to.terminal',
      '"bus"',
      'unknownTerminal',
      { terminal: 'bus', fitting: 'Name of fuse', kind: 'fuse', name: 'Name of feed' },
    ],
    [
      'runs.3.from.terminal',
      '"out3"',
      'unknownTerminal',
      { terminal: 'out3', fitting: 'Name of block', kind: 'block', name: 'Name of toFront' },
    ],
  ])('%s = %s: %s', (path, json, code, params) => {
    const where = path.replace(/\.(\d+)/g, '[$1]');
    expect(reasonFor(withAt(path, json))).toEqual({ code, where, params });
  });

  it('a run from a terminal to itself', () => {
    const hostile = withAt('runs.0.to', '{"fittingId":"battery","terminal":"positive"}');
    expect(reasonFor(hostile)).toMatchObject({
      code: 'selfJoin',
      where: 'runs[0].to',
      params: { terminal: 'positive' },
    });
  });

  it('a run whose end lies on another sheet', () => {
    const hostile = changed((document) => {
      const { sheets, fittings } = document as unknown as { sheets: object[]; fittings: Record<string, unknown>[] };
      sheets.push({ ...sheets[0], id: 'other' });
      const battery = fittings[0];
      if (battery !== undefined) battery.sheetId = 'other';
    });
    expect(reasonFor(hostile)).toMatchObject({ code: 'endOffSheet', where: 'runs[0].from' });
  });

  it('an area, tie, mount or picture of a sheet that is gone', () => {
    for (const [list, rest] of [
      ['areas', '"zone":"hot","outline":[{"xM":0,"yM":0},{"xM":1,"yM":0},{"xM":1,"yM":1}]'],
      ['ties', '"at":{"xM":0,"yM":0}'],
      ['mounts', '"at":{"xM":0,"yM":0}'],
      ['pictures', '"at":{"xM":0,"yM":0},"widthM":1'],
    ]) {
      const item = (sheetId: string) => `[{"id":"new","name":"New","sheetId":"${sheetId}",${rest}}]`;
      expect(openPlan(withAt(`${list}`, item('sheet'))).ok, list).toBe(true);
      expect(reasonFor(withAt(`${list}`, item('gone')))).toMatchObject({
        code: 'unknownSheet',
        where: `${list}[0].sheetId`,
        params: { id: 'gone', name: 'New' },
      });
    }
  });
});
