/** What a proposed wire bears: its number, its colour, its section and the reason for that. */
import { describe, expect, test } from 'vitest';
import { sample } from '../../../../samples/read.fixture.ts';
import type { Refit, Wiring } from '../../../refit/types.ts';
import { CONDUCTOR_CURRENT } from '../../../tables/conductor-current.ts';
import { readWiring } from '../read.ts';
import { wired } from '../wired.fixture.ts';
import { circuitsOf } from './colours.ts';
import { dress } from './dress.ts';
import { proposeWiring } from './index.ts';
import { strandsOf } from './strands.ts';

const EMPTY: Wiring = { devices: {}, wires: {}, cables: {}, settings: {} };
const bare = (id: string): Refit => ({ ...sample(id), wiring: EMPTY });

/** A refit in which nothing is but this wiring. */
const nothing = (wiring: Wiring): Refit => ({
  ...sample('boatyard-mill'),
  stop: null,
  chains: [],
  places: {},
  parts: {},
  wiring,
});

type Devices = Readonly<
  Record<string, { readonly kind: string; readonly settings?: Readonly<Record<string, string>> }>
>;

/** A wiring of devices by their kind, and of wires by their ends. */
const drawn = (devices: Devices, wires: readonly (readonly [string, string])[]): Wiring =>
  wired(
    Object.entries(devices).map(([id, { kind, settings = {} }]) =>
      [
        id,
        kind,
        ...Object.entries(settings).map(([name, value]) => `${name}=${value.replaceAll(' ', '_')}`),
      ].join(' '),
    ),
    wires.map(([from, to]) => `${from} ${to}`),
  );

/** Settings and reasons of the wires between these terminals, by 'from to'. */
function dressed(
  devices: Devices,
  wires: readonly (readonly [string, string])[],
  settings: Wiring['settings'] = {},
) {
  const wiring: Wiring = { ...drawn(devices, wires), settings };
  const made = dress(nothing(wiring), new Set(Object.keys(wiring.wires)));
  return (from: string, to: string) => {
    const { id } = Object.values(wiring.wires).find((each) => each.from === from && each.to === to)!;
    return { ...made.settings.get(id)!, because: made.reasons.get(id)! } as Record<string, string>;
  };
}

const LIES = { 'cabinet-temperature': '40 °C', 'outside-temperature': '40 °C', together: '1' };

describe('numbers', () => {
  test.each(['carriage-works-lathe', 'boatyard-mill'])(
    'derived: %s: two minuses that meet only at earth bear two numbers; the one of 24 V is blue and thin',
    (id) => {
      const refit = bare(id);
      const { wiring } = proposeWiring(refit);
      const read = readWiring(wiring, refit);
      const at = (terminal: string) =>
        Object.values(wiring.wires).filter(({ from, to }) => from === terminal || to === terminal);
      // Joined all the same, by earth.
      expect(read.netOf.get('G1.minus')).toBe(read.netOf.get('G2.minus'));
      const [small] = at('G1.minus');
      const power = at('G2.minus').find(({ from }) => !from.startsWith('X1.'))!;
      expect(small!.settings.number).not.toBe(power.settings.number);
      expect(small!.settings).toMatchObject({ colour: 'blue', section: '1 mm²' });
      expect(power.settings.colour).toBe('black');
      for (const terminal of ['A1.minus', 'K1.A2', 'T1.COM'])
        for (const { settings } of at(terminal))
          expect(settings, terminal).toMatchObject({ number: small!.settings.number, colour: 'blue' });
      // Green and yellow belongs to what protects; the way of a circuit to earth is a wire of that circuit.
      for (const { from, to, settings } of Object.values(wiring.wires)) {
        const ends = [from, to].map((end) => read.terminals.get(end)!.nature.kind);
        expect(settings.colour === 'green-yellow', `${from} ${to}`).toBe(
          ends.every((kind) => kind === 'earth'),
        );
      }
    },
  );

  test('derived: joined by a wire, they are one; a strip that only passes earth on is earth', () => {
    const supplies = {
      G1: { kind: 'supply' },
      G2: { kind: 'supply' },
      X1: { kind: 'earth-bar' },
      X9: { kind: 'strip', settings: { bridges: '1-3' } },
      H1: { kind: 'metal' },
    };
    const earths: [string, string][] = [
      ['G1.minus', 'X1.1'],
      ['G2.minus', 'X1.2'],
      ['X1.3', 'X9.1'],
      ['X9.2', 'H1.PE'],
    ];
    const apart = dressed(supplies, earths);
    expect(apart('G1.minus', 'X1.1').number).not.toBe(apart('G2.minus', 'X1.2').number);
    for (const [from, to] of earths.slice(2))
      expect(apart(from, to)).toMatchObject({ number: 'PE', colour: 'green-yellow' });
    const joined = dressed(supplies, [...earths, ['G1.minus', 'G2.minus']]);
    expect(joined('G1.minus', 'X1.1').number).toBe(joined('G2.minus', 'X1.2').number);
  });

  test('derived: a number that is there already is kept for what hangs on it, and given to nothing else', () => {
    const bareWiring = drawn({ G1: { kind: 'supply' }, K1: { kind: 'relay' }, K2: { kind: 'relay' } }, [
      ['G1.minus', 'K1.A2'],
      ['G1.minus', 'K2.A2'],
      ['G1.plus', 'K2.A1'],
    ]);
    const [first, ...fresh] = Object.values(bareWiring.wires);
    const wiring = {
      ...bareWiring,
      wires: { ...bareWiring.wires, [first!.id]: { ...first!, settings: { number: '1' } } },
    };
    const { settings } = dress(nothing(wiring), new Set(fresh.map(({ id }) => id)));
    expect(fresh.map(({ id }) => settings.get(id)!.number)).toEqual(['1', '2']);
  });

  test('derived: strands part the terminals: every terminal in one, and every one in a net', () => {
    const refit = sample('carriage-works-lathe');
    const read = readWiring(refit.wiring, refit);
    const { all } = strandsOf(read);
    expect(all.reduce((sum, { terminals }) => sum + terminals.length, 0)).toBe(read.terminals.size);
    for (const { terminals } of all) expect(new Set(terminals.map((id) => read.netOf.get(id))).size).toBe(1);
  });
});

describe('colours', () => {
  test('published: IEC 60204-1:2016, 13.2.4: black power, red a.c. control, blue d.c. control, light blue neutral', () => {
    const of = dressed(
      {
        X0: { kind: 'mains-inlet', settings: { phases: 'one' } },
        Q1: { kind: 'main-switch' },
        G1: { kind: 'supply' },
        T9: { kind: 'transformer' },
        S1: { kind: 'button' },
        K1: { kind: 'contactor', settings: { 'coil-supply': 'a.c.' } },
        K2: { kind: 'relay' },
        P1: { kind: 'lamp' },
        F9: { kind: 'breaker' },
      },
      [
        ['X0.L1', 'Q1.1'],
        ['X0.N', 'Q1.3'],
        ['Q1.2', 'G1.L'],
        ['Q1.4', 'G1.N'],
        ['Q1.2', 'T9.1'],
        ['Q1.4', 'T9.2'],
        ['T9.3', 'S1.13'],
        ['S1.14', 'K1.A1'],
        ['T9.4', 'K1.A2'],
        ['G1.plus', 'K2.A1'],
        ['G1.minus', 'K2.A2'],
        ['X0.L1', 'F9.1'],
        ['F9.2', 'P1.x1'],
        ['X0.N', 'P1.x2'],
      ],
    );
    const colour = (from: string, to: string) => of(from, to).colour;
    expect(colour('X0.L1', 'Q1.1')).toBe('black');
    expect(colour('Q1.2', 'G1.L')).toBe('black');
    expect(colour('X0.N', 'Q1.3')).toBe('light blue');
    expect(colour('Q1.4', 'T9.2')).toBe('light blue');
    expect(colour('T9.3', 'S1.13')).toBe('red');
    // Behind the button too.
    expect(colour('S1.14', 'K1.A1')).toBe('red');
    expect(colour('T9.4', 'K1.A2')).toBe('red');
    expect(colour('G1.plus', 'K2.A1')).toBe('blue');
    expect(colour('G1.minus', 'K2.A2')).toBe('blue');
    // Alive with the main switch off: excepted; what leads to that switch is not.
    expect(colour('X0.L1', 'F9.1')).toBe('orange');
    expect(colour('F9.2', 'P1.x1')).toBe('orange');
    expect(colour('X0.N', 'P1.x2')).toBe('light blue');
  });

  test('derived: a fuse or a residual current device before the main switch leads to it', () => {
    const of = dressed(
      {
        X0: { kind: 'mains-inlet', settings: { phases: 'one' } },
        F0: { kind: 'residual' },
        Q1: { kind: 'main-switch' },
        G1: { kind: 'supply' },
      },
      [
        ['X0.L1', 'F0.1'],
        ['F0.2', 'Q1.1'],
        ['Q1.2', 'G1.L'],
      ],
    );
    for (const [from, to] of [
      ['X0.L1', 'F0.1'],
      ['F0.2', 'Q1.1'],
      ['Q1.2', 'G1.L'],
    ] as const)
      expect(of(from, to).colour, from).toBe('black');
  });

  test('derived: what carries the d.c. of the drives is power there and back', () => {
    const refit = sample('carriage-works-lathe');
    const read = readWiring(refit.wiring, refit);
    const strands = strandsOf(read);
    const { carries } = circuitsOf(read, strands);
    for (const id of ['G2.plus', 'G2.minus', 'T1.DC+', 'T1.DC-', 'K1.4'])
      expect(carries(strands.at(id)!)).toBe('power');
    for (const id of ['G1.minus', 'G3.minus', 'T1.COM'])
      expect(carries(strands.at(id)!)).toBe('d.c. control');
  });
});

describe('sections', () => {
  const branch = (amps: string | undefined) => ({
    X0: { kind: 'mains-inlet', settings: { phases: 'three', current: '25 A' } },
    F1: { kind: 'breaker', settings: { poles: '3', ...(amps === undefined ? {} : { amps }) } },
    M1: { kind: 'mains-motor', settings: { phases: 'three' } },
  });
  const WIRES: [string, string][] = [
    ['X0.L1', 'F1.1'],
    ['X0.L2', 'F1.3'],
    ['X0.L3', 'F1.5'],
    ['F1.2', 'M1.U'],
    ['F1.4', 'M1.V'],
    ['F1.6', 'M1.W'],
  ];

  test.each([2, 6, 10, 13, 16, 20])(
    'derived: behind a breaker of %d A the thinnest that carries it',
    (amps) => {
      const { section, because } = dressed(branch(`${amps} A`), WIRES, LIES)('F1.2', 'M1.U');
      const thinnest = CONDUCTOR_CURRENT.find(({ B1 }) => B1 >= amps)!.area;
      expect(section).toBe(`${Math.max(1.5, thinnest)} mm²`);
      expect(because).toContain(`${amps} A of F1`);
      expect(because).toMatch(thinnest < 1.5 ? /^section usual/ : /^section for/);
    },
  );

  test('derived: before it, what the fuse of the socket lets pass; in company thicker', () => {
    // 25 A: 6 mm² carry 31 A alone, and 0.7 times that beside two others, which asks for 10 mm².
    expect(dressed(branch('6 A'), WIRES, LIES)('X0.L1', 'F1.1').section).toBe('6 mm²');
    expect(dressed(branch('6 A'), WIRES, { ...LIES, together: '4' })('X0.L1', 'F1.1').section).toBe('10 mm²');
  });

  test('derived: neither fuse nor load known: no section, and what it waits for; usual only where it is called so', () => {
    const { section, because } = dressed(branch(undefined), WIRES)('F1.2', 'M1.U');
    expect(section).toBeUndefined();
    expect(because).toBe('section waits for: the current of M1');
    const known = { ...branch(undefined), M1: { kind: 'mains-motor', settings: { current: '4 A' } } };
    const load = dressed(known, WIRES)('F1.2', 'M1.U');
    expect(load.section).toBe('1.5 mm²');
    expect(load.because).toMatch(/6 A of the fuse that suits its load.*while nobody has said how it lies/);
  });

  test('derived: two branches come back on one neutral: their sum, and not more than the fuse before them', () => {
    const neutral = (before: string) =>
      dressed(
        {
          X0: { kind: 'mains-inlet', settings: { phases: 'one', current: before } },
          F1: { kind: 'breaker', settings: { amps: '10 A' } },
          F2: { kind: 'breaker', settings: { amps: '13 A' } },
          G1: { kind: 'supply' },
          G2: { kind: 'supply' },
          X2: { kind: 'strip', settings: { bridges: '1-4' } },
        },
        [
          ['X0.L1', 'F1.1'],
          ['X0.L1', 'F2.1'],
          ['F1.2', 'G1.L'],
          ['F2.2', 'G2.L'],
          ['X0.N', 'X2.1'],
          ['X2.2', 'G1.N'],
          ['X2.3', 'G2.N'],
        ],
        LIES,
      );
    expect(neutral('32 A')('X0.N', 'X2.1').because).toContain('23 A of F1 and F2 together');
    expect(neutral('16 A')('X0.N', 'X2.1').because).toContain('16 A of the fuse before X0');
    expect(neutral('16 A')('X2.2', 'G1.N').because).toContain('10 A of F1');
    expect(neutral('16 A')('X2.3', 'G2.N').because).toContain('13 A of F2');
  });

  test('published: IEC 60204-1:2016, Table 1: a protective conductor as thick as the wires that feed the device', () => {
    const of = dressed(
      {
        ...branch('40 A'),
        X0: { kind: 'mains-inlet', settings: { phases: 'three', current: '40 A' } },
        X1: { kind: 'earth-bar' },
        H1: { kind: 'metal' },
      },
      [...WIRES, ['X1.1', 'M1.PE'], ['X1.2', 'H1.PE'], ['X1.3', 'X0.PE']],
      LIES,
    );
    for (const to of ['M1.PE', 'H1.PE', 'X0.PE'])
      expect(of(to === 'M1.PE' ? 'X1.1' : to === 'H1.PE' ? 'X1.2' : 'X1.3', to).section).toBe('10 mm²');
  });

  test('derived: a short circuit leaves no currents; the sections say so', () => {
    const of = dressed({ G1: { kind: 'supply' }, F1: { kind: 'fuse' }, T1: { kind: 'drive' } }, [
      ['G1.plus', 'F1.1'],
      ['F1.2', 'T1.DC+'],
      ['G1.minus', 'T1.DC-'],
      ['F1.2', 'G1.minus'],
    ]);
    expect(of('F1.2', 'T1.DC+').section).toBeUndefined();
    expect(of('F1.2', 'T1.DC+').because).toContain('something is joined that must not be');
  });

  test.each(['carriage-works-lathe', 'boatyard-mill'])(
    'derived: %s with nothing known: no wire has a number without a reason, a word or a wish',
    (id) => {
      const refit = bare(id);
      const nobody: Refit = {
        ...refit,
        parts: Object.fromEntries(
          Object.entries(refit.parts).map(([part, each]) => [part, { ...each, facts: {} }]),
        ),
      };
      for (const given of [refit, nobody]) {
        const { changes, reasons, wiring } = proposeWiring(given);
        const wires = changes.flatMap((change) => (change.do === 'wire' && change.new ? [change.new] : []));
        expect(wires.length).toBeGreaterThan(20);
        for (const { id: wire, settings, cable } of wires) {
          const because = reasons[wire]!;
          const section = cable === null ? settings.section : wiring.cables[cable]!.settings.section;
          expect(because, wire).toMatch(/^section (for|of|as|the|usual|waits for: )/);
          if (because.startsWith('section waits for')) expect(section, wire).toBeUndefined();
          else expect(section, wire).toMatch(/^\d+(\.\d+)? mm²$/);
        }
      }
      const blank = proposeWiring(nobody);
      for (const { from, to, settings, cable } of Object.values(blank.wiring.wires))
        if (cable === null && ['black', 'light blue'].includes(settings.colour!))
          expect(settings.section, `${from} ${to}`).toBeUndefined();
    },
  );
});
