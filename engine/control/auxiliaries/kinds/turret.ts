import { choiceOf, count } from '../../../quantity/settings.ts';
import { type Code, codeNames, type Parity, patterns } from '../codes.ts';
import { afterPower, auxiliary, moves, RECOVERY, twoEnds, VALVE, valveOf } from '../common.ts';
import type { Hazard, Input, Operation, Output, Rule, Seen, Step, Variable } from '../machine.ts';
import { limit, time, yesNo } from '../settings.ts';

export const turret = auxiliary({
  id: 'turret',
  name: 'turret',
  says: 'Lets go, turns until the wanted position stands in front, and clamps.',
  machines: ['lathe', 'other'],
  states: ['clamped'],
  settings: {
    positions: count('positions', '8', 24, 2),
    code: choiceOf('how it tells its position', {
      binary: 'binary code',
      bcd: 'decimal digits in binary (BCD)',
      gray: 'Gray code',
      each: 'one switch for each position',
    }),
    'counts-from': choiceOf('the code of the first position is', { '0': 'zero', '1': 'one' }),
    parity: choiceOf(
      'parity bit',
      { none: 'none', odd: 'odd', even: 'even' },
      'One bit more, so that a single bit that is wrong makes a code that no position has.',
    ),
    strobe: yesNo(
      'a switch tells when it stands in place',
      'yes',
      'Between two places a code shows anything. The switch says when to read it.',
    ),
    directions: choiceOf('turns', { one: 'one way', both: 'both ways' }),
    pin: yesNo('a pin catches it before it is clamped', 'no'),
    valve: VALVE,
    'clamped-switch': yesNo('a switch tells that it is clamped', 'yes'),
    'free-switch': yesNo('a switch tells that it is free', 'no'),
    'look-again': yesNo('the position is read again once it is clamped', 'yes'),
    'asks-place': yesNo('it turns only while the slide stands clear', 'yes'),
    'powered-tools': yesNo('it drives tools', 'no'),
    'position-time': time('time from one position to the next', '0.5 s'),
    'clamp-time': time('time to clamp or let go', '0.6 s'),
    'clamp-limit': limit('clamping and letting go', '3 s'),
    'turn-limit': limit('turning', '15 s'),
    ...RECOVERY,
  },
  code: (read) => read.choice('code'),
  abilities: (read) => (read.yes('powered-tools') ? { 'powered-tools': 'the turret drives tools' } : {}),
  make: (read) => {
    const n = read.number('positions');
    const code = read.choice('code') as Code;
    const parity = read.choice('parity') as Parity;
    const shows = patterns(n, code, read.choice('counts-from') === '0' ? 0 : 1, parity);
    const names = codeNames(code, parity, shows[0]!.length);
    const place = (p: number): string => `${p + 1}`;
    const gap = (p: number): string => `past ${p + 1}`;
    const all = Array.from({ length: n }, (_, p) => p);
    const clampedSwitch = read.yes('clamped-switch');
    const freeSwitch = read.yes('free-switch');
    const strobe = read.yes('strobe');
    const hasPin = read.yes('pin');
    const asksPlace = read.yes('asks-place');

    const clamp = twoEnds({
      id: 'clamp',
      name: 'Turret',
      rest: 'clamped',
      work: 'free',
      start: 'rest',
      restOutput: 'clamp the turret',
      workOutput: 'let the turret go',
      valve: valveOf(read),
      restOnly: { turn: all.map(place) },
    });
    const variables: Variable[] = [
      { id: 'turn', values: all.flatMap((p) => [place(p), gap(p)]), start: place(0) },
      { id: 'target', values: all.map(place), start: place(0) },
      clamp.variable,
      ...(hasPin ? [{ id: 'pin', values: ['out', 'in'], start: 'out' }] : []),
      ...(asksPlace ? [{ id: 'slide', values: ['clear', 'near'], start: 'clear' }] : []),
    ];
    const both = read.choice('directions') === 'both';
    const motors: Output[] = both
      ? [
          { id: 'forward', name: 'turn the turret forward' },
          { id: 'back', name: 'turn the turret back' },
        ]
      : [{ id: 'forward', name: 'turn the turret' }];
    const codeInputs = names.map((name, bit): Input => {
      const on = (p: number): boolean => shows[p % n]![bit]!;
      const sure = all.flatMap((p) => [
        ...(on(p) ? [place(p)] : []),
        ...(on(p) && on(p + 1) ? [gap(p)] : []),
      ]);
      const unsure = all.filter((p) => on(p) !== on(p + 1)).map(gap);
      return {
        id: `code-${bit}`,
        name,
        // With a switch for each position, turning the machine on by one changes nothing but the names.
        ...(code === 'each' && parity === 'none' ? { alike: 'position' } : {}),
        on: sure.length > 0 ? [{ turn: sure }] : [],
        maybe: unsure.length > 0 ? [{ turn: unsure }] : [],
      };
    });
    const reads = (p: number): Record<string, boolean> => ({
      ...Object.fromEntries(shows[p]!.map((on, bit) => [`code-${bit}`, on])),
      ...(strobe ? { strobe: true } : {}),
    });
    const atTarget = all.map((p): Seen => ({ inputs: reads(p), when: { target: place(p) } }));
    const letGo = { ...(clampedSwitch ? { clamped: false } : {}), ...(freeSwitch ? { free: true } : {}) };
    const gripped = { ...(clampedSwitch ? { clamped: true } : {}), ...(freeSwitch ? { free: false } : {}) };
    const clampTime = read.number('clamp-time');
    const clampStep = (
      id: string,
      says: string,
      drive: Pick<Step, 'on' | 'off'>,
      seen: Record<string, boolean>,
    ): Step =>
      Object.keys(seen).length > 0
        ? {
            id,
            says,
            ...drive,
            until: [{ inputs: seen }],
            limit: read.limit('clamp-limit'),
            limitSetting: 'clamp-limit',
            usual: clampTime,
          }
        : { id, says, ...drive, dwell: clampTime };
    const turn = {
      limit: read.limit('turn-limit'),
      limitSetting: 'turn-limit',
      usual: n * read.number('position-time'),
    };
    const change = (motor: string, name: string): Operation => ({
      id: motor,
      name,
      ...(asksPlace
        ? { needs: [{ inputs: { 'slide-clear': true } }], needsSays: 'the slide stands clear' }
        : {}),
      sets: { target: 'any' },
      steps: [
        clampStep('release', 'Let the turret go', clamp.to.work, letGo),
        {
          id: 'turn',
          says: 'Turn until the wanted position shows',
          on: [motor],
          until: atTarget,
          untilSays: `the code of the wanted position${strobe ? ', and “in place”' : ''}`,
          ...turn,
        },
        ...(hasPin
          ? [
              {
                id: 'catch',
                says: 'Catch it with the pin',
                on: ['pin-out'],
                until: [{ inputs: { 'pin-in': true } }],
                limit: read.limit('turn-limit'),
                limitSetting: 'turn-limit',
                usual: read.number('position-time'),
              },
            ]
          : []),
        { id: 'stop', says: 'Stop turning', off: [motor], dwell: 0.1 },
        clampStep(
          'clamp',
          'Clamp it',
          { ...clamp.to.rest, off: [...(clamp.to.rest.off ?? []), ...(hasPin ? ['pin-out'] : [])] },
          gripped,
        ),
        ...(read.yes('look-again')
          ? [
              {
                id: 'look',
                says: 'Read the position again',
                until: atTarget,
                untilSays: `the code of the wanted position${strobe ? ', and “in place”' : ''}`,
                limit: read.limit('clamp-limit'),
                limitSetting: 'clamp-limit',
              },
            ]
          : []),
      ],
      ends: 'ready',
      shows: 'clamped',
    });
    const pinRules: Rule[] = hasPin
      ? [
          moves('The pin drops in', { 'pin-out': 'on', pin: 'out', turn: all.map(place) }, { pin: 'in' }),
          moves('The pin comes out', { 'pin-out': 'off', pin: 'in' }, { pin: 'out' }),
        ]
      : [];
    const turns = (motor: string, by: number): Rule => ({
      who: 'mechanism',
      says: 'The turret turns on',
      when: { [motor]: 'on', clamp: 'free', ...(hasPin ? { pin: 'out' } : {}) },
      becomes: { turn: { by } },
      endless: true,
    });
    const wrong: Hazard = {
      id: 'wrong-tool',
      says: 'another position than the wanted one is taken for right, and cutting goes on with the wrong tool',
      when: all.map((p) => ({
        step: 'ready',
        target: place(p),
        turn: [...all.filter((each) => each !== p).map(place), ...all.map(gap)],
      })),
      cure: 'A parity bit or a switch for each position shows a bit that is wrong; “in place” keeps codes between two places out; reading again once it is clamped catches the rest. After a power cut, read the switches instead of trusting the memory.',
    };
    return {
      variables,
      inputs: [
        ...codeInputs,
        ...(strobe ? [{ id: 'strobe', name: 'in place', on: [{ turn: all.map(place) }] }] : []),
        ...(clampedSwitch ? [{ id: 'clamped', name: 'turret clamped', on: [{ clamp: 'clamped' }] }] : []),
        ...(freeSwitch ? [{ id: 'free', name: 'turret free', on: [{ clamp: 'free' }] }] : []),
        ...(hasPin ? [{ id: 'pin-in', name: 'pin is in', on: [{ pin: 'in' }] }] : []),
        ...(asksPlace
          ? [
              {
                id: 'slide-clear',
                name: 'slide stands clear',
                on: [{ slide: 'clear' }],
                inside: true as const,
              },
            ]
          : []),
      ],
      outputs: [...clamp.outputs, ...motors, ...(hasPin ? [{ id: 'pin-out', name: 'drop the pin' }] : [])],
      rules: [
        ...clamp.rules,
        ...motors.map(({ id }) => turns(id, id === 'forward' ? 1 : -1)),
        ...pinRules,
        ...(asksPlace
          ? (['clear', 'near'] as const).map(
              (now): Rule => ({
                who: 'surroundings',
                says: now === 'clear' ? 'The slide moves to the work' : 'The slide moves clear of the work',
                when: { slide: now, step: ['ready', 'stopped'] },
                becomes: { slide: now === 'clear' ? 'near' : 'clear' },
              }),
            )
          : []),
      ],
      operations: both
        ? [change('forward', 'change position, forward'), change('back', 'change position, back')]
        : [change('forward', 'change position')],
      hazards: [
        {
          id: 'loose',
          says: 'cutting is allowed while the turret is not clamped',
          when: [{ step: 'ready', clamp: ['between', 'free'] }],
          cure: 'A switch that tells that it is clamped, waited for with a time-out. After a power cut, read it before anything may move.',
        },
        wrong,
        {
          id: 'against-clamp',
          says: 'the motor pushes against a clamped turret',
          when: motors.map(({ id }) => ({
            [id]: 'on',
            clamp: 'clamped',
            step: motors.flatMap((each) => [`${each.id}.turn`]),
          })),
          cure: 'Wait for a switch that tells that it has let go, not for a time; and give the motor an overload cut-out.',
        },
        ...(asksPlace
          ? [
              {
                id: 'swings-near',
                says: 'the turret turns while the slide stands near the work',
                when: motors.map(({ id }) => ({ [id]: 'on', clamp: 'free', slide: 'near' })),
                cure: 'Turn off its outputs when it is stopped in the middle, and start again only from a clear place.',
              },
            ]
          : []),
      ],
      troubles: [
        ...(hasPin
          ? []
          : [
              {
                id: 'runs-on',
                says: 'the turret runs on past its place',
                adds: [
                  {
                    who: 'mechanism' as const,
                    says: 'The turret runs on past its place',
                    when: { step: motors.map(({ id }) => `${id}.stop`), turn: all.map(place), clamp: 'free' },
                    becomes: { turn: { by: 1 } },
                  },
                ],
              },
            ]),
        { id: 'jams', says: 'the turret jams', stops: ['The turret turns on'] },
      ],
      afterPower: afterPower(
        read,
        all.map((p) => ({ inputs: { ...reads(p), ...gripped }, sets: { target: place(p) } })),
      ),
    };
  },
});
