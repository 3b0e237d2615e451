import { describe, expect, it } from 'vitest';
import { openPlan } from '../../src/plan/open.ts';
import { changed, type Raw, reasonFor, withAt } from './support/hostile.ts';

/** A family of links that a user holds, as a piece of JSON, changed in one thing. */
const ownLink = (change: object = {}) =>
  JSON.stringify({
    family: 'own1',
    name: 'Own',
    seat: 'holder',
    ratingsA: [60],
    breakingA: 1000,
    ratedV: 32,
    ...change,
  });

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
    ['settings.systemV', '48', 'notAllowed'],
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
    ['fittings.0.kind', '"transformer"', 'notAllowed'],
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
    ['settings.linkFamilies.0', '"own7"', 'notAllowed'],
    ['settings.linkFamilies.0', '"own1"', 'unknownFamily'],
    ['settings.ownLinks', '[{"family":"own1"}]', 'missingKey'],
    ['settings.ownLinks', `[${ownLink({ family: 'slotted-long' })}]`, 'notAllowed'],
    ['settings.ownLinks', `[${ownLink({ ratingsA: [] })}]`, 'listTooShort'],
    ['settings.ownLinks', `[${ownLink({ ratingsA: [60, 0] })}]`, 'tooSmall'],
    ['settings.ownLinks', `[${ownLink({ breakingA: 0 })}]`, 'tooSmall'],
    ['settings.ownLinks', `[${ownLink()},${ownLink()}]`, 'duplicateFamily'],
    ['settings.ownLinks', `[${Array.from({ length: 7 }, () => ownLink()).join()}]`, 'listTooLong'],
    ['settings.peukert.value', '0.9', 'tooSmall'],
    ['fittings.0.takes', '"four"', 'badGauge'],
    ['fittings.0.takes', '"mm2:36"', 'unknownGauge'],
    ['fittings.0.chemistry', '"nickel"', 'notAllowed'],
    ['fittings.0.ccaStandard', '"jis"', 'notAllowed'],
    ['fittings.0.internalOhm', '0.005', 'wrongType'],
    ['fittings.0.internalOhm', '{"value":0,"origin":"told"}', 'tooSmall'],
    ['fittings.0.postLink', '{"ratingA":100}', 'missingKey'],
    ['fittings.0.postLink', '{"ratingA":100,"family":"own4"}', 'unknownFamily'],
    ['fittings.0.sensedNegative', '0', 'wrongType'],
    ['fittings.1.link.family', '"own1"', 'unknownFamily'],
    ['fittings.2.grommetInsideMm', '0', 'tooSmall'],
    ['fittings.3.outputsTake', '"awg:5"', 'unknownGauge'],
    ['fittings.3.outputs.1.link.family', '"own6"', 'unknownFamily'],
    ['fittings.4.supplyInputs', '2', 'notAllowed'],
    ['fittings.4.idleA.value', '-1', 'tooSmall'],
    ['fittings.4.duty', '0', 'tooSmall'],
    ['runs.0.bundled', '0', 'tooSmall'],
    ['runs.0.bundled', '1.5', 'wrongType'],
    ['runs.0.bendRadiusMm', '0', 'tooSmall'],
    ['runs.0.fromJointOhm', '-0.1', 'tooSmall'],
    ['runs.0.toJointOhm', '{"value":0.1}', 'wrongType'],
    ['runs.0.conductor.strands', '{"count":0,"diameterMm":0.2}', 'tooSmall'],
    ['runs.0.conductor.strands', '{"count":19}', 'missingKey'],
    ['runs.0.conductor.copperThrough', '"yes"', 'wrongType'],
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
    const ground = {
      id: 'x',
      name: '',
      sheetId: 'sheet',
      at: { xM: 1, yM: 1 },
      zone: 'auto',
      takes: null,
      locked: false,
    };
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
      expected: 'power, ground, remote, factory',
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

  it.each([
    ['a fuse', 'fittings.1.link.family', 'Name of fuse'],
    ['an output of a block', 'fittings.3.outputs.1.link.family', 'Name of block'],
  ])('an own family that is not told, on %s', (_, path, name) => {
    const where = path.replace(/\.(\d+)/g, '[$1]');
    const reason = { code: 'unknownFamily', where, params: { family: 'own2', name } };
    expect(reasonFor(withAt(path, '"own2"'))).toEqual(reason);
    const told = changed((document) => {
      const { settings } = document as unknown as { settings: { ownLinks: unknown[] } };
      settings.ownLinks = [JSON.parse(ownLink()), JSON.parse(ownLink({ family: 'own2' }))];
    });
    const family = '"family":"auto"';
    expect(openPlan(told.replaceAll(family, '"family":"own2"')).ok).toBe(true);
    expect(reasonFor(told.replaceAll(family, '"family":"own3"')).code).toBe('unknownFamily');
  });

  it('an own family told twice', () => {
    const twice = `[${ownLink()},${ownLink({ family: 'own2' })},${ownLink({ name: 'Again' })}]`;
    expect(reasonFor(withAt('settings.ownLinks', twice))).toEqual({
      code: 'duplicateFamily',
      where: 'settings.ownLinks[2].family',
      params: { family: 'own1', name: 'Again' },
    });
  });

  it('a run to the second supply of an amplifier that has one', () => {
    const second = withAt('runs.3.to.terminal', '"supply2"');
    expect(reasonFor(second)).toMatchObject({ code: 'unknownTerminal', params: { terminal: 'supply2' } });
    const two = second.replace('"supplyInputs":"one"', '"supplyInputs":"two"');
    expect(openPlan(two).ok).toBe(true);
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
