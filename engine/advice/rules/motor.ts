/** What tells a motor worth keeping from one that is not. */

import type { PartFacts } from '../part-facts.ts';
import type { Reason, TestResult } from '../types.ts';

const PRACTICE = 'common practice, no source';
const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** Test results that stand in its facts, against their limits. */
export function motorTests({ value }: PartFacts): TestResult[] {
  const tests: TestResult[] = [];
  const insulation = value('motor', 'insulation');
  if (insulation !== undefined) {
    const source =
      'IEC 60204-1, 18.3 (500 V d.c., 1 MΩ); 5 MΩ for armatures IEEE 43-2013; 100 MΩ common practice';
    const title = 'Insulation, winding to frame';
    if (insulation < 1e6)
      tests.push({
        title,
        source,
        level: 'bad',
        sentence:
          'Below 1 MΩ the winding must not be put on a supply: it may put the frame live. Dry and clean it once and test again; else it is rewound or goes.',
      });
    else if (insulation < 5e6)
      tests.push({
        title,
        source,
        level: 'bad',
        sentence:
          'Below 5 MΩ: clean out brush dust and oil, dry it warm for a day and test again before anything else.',
      });
    else if (insulation < 100e6)
      tests.push({
        title,
        source,
        level: 'doubtful',
        sentence: 'Damp or dirty rather than broken: a sound dry winding shows above 100 MΩ.',
      });
    else tests.push({ title, source, level: 'good', sentence: 'The insulation is sound.' });
  }
  const spread = value('motor', 'resistanceSpread');
  if (spread !== undefined) {
    const title = 'Winding resistance over the turn';
    if (spread > 0.15)
      tests.push({
        title,
        source: PRACTICE,
        level: 'bad',
        sentence: `It differs by ${percent(spread)}: a coil or a commutator bar is open or shorted, or brushes do not touch. Clean the commutator, bed the brushes and measure again.`,
      });
    else if (spread > 0.05)
      tests.push({
        title,
        source: PRACTICE,
        level: 'doubtful',
        sentence: `It differs by ${percent(spread)}: clean the commutator and bed the brushes.`,
      });
    else
      tests.push({ title, source: PRACTICE, level: 'good', sentence: `It is even to ${percent(spread)}.` });
  }
  const now = value('motor', 'emf');
  const plate = value('motor', 'emfPlate');
  if (now !== undefined && plate !== undefined) {
    const share = now / plate;
    const title = 'Back-EMF against the plate';
    if (share < 0.9)
      tests.push({
        title,
        source: PRACTICE,
        level: 'bad',
        sentence: `It makes ${percent(share)} of its plate: the magnets have weakened. It turns faster, gives less torque for each ampere and heats more for the same work; only a specialist can magnetise it again.`,
      });
    else if (share < 0.95)
      tests.push({
        title,
        source: PRACTICE,
        level: 'doubtful',
        sentence: `It makes ${percent(share)} of its plate: a little weak, or a hot motor or a meter a little out. Use the measured value, not the plate.`,
      });
    else if (share > 1.1)
      tests.push({
        title,
        source: PRACTICE,
        level: 'doubtful',
        sentence: `It makes ${percent(share)} of its plate; magnets do not gain. Look how the plate states it: DC, peak or r.m.s.`,
      });
    else
      tests.push({
        title,
        source: PRACTICE,
        level: 'good',
        sentence: `It makes ${percent(share)} of its plate: the magnets are sound.`,
      });
  }
  return tests;
}

export function motorReasons({ value, choice, choices, fitted }: PartFacts): Reason[] {
  const reasons: Reason[] = [];
  const kind = choice('motor', 'type');
  const feedback = fitted('feedback') ? choice('feedback', 'type') : undefined;
  const now = value('motor', 'emf');
  const plate = value('motor', 'emfPlate');
  if (now !== undefined && plate !== undefined && now / plate < 0.9)
    reasons.push({
      towards: 'replace',
      source: PRACTICE,
      sentence: 'Its magnets are weak, and that is not mended in a workshop.',
    });
  const insulation = value('motor', 'insulation');
  if (insulation !== undefined && insulation < 5e6)
    reasons.push({
      towards: 'repair',
      source: 'IEC 60204-1, 18.3; IEEE 43-2013',
      sentence:
        'Its insulation does not pass. Clean, dry and test again first; it must not be powered before it passes.',
    });
  const spread = value('motor', 'resistanceSpread');
  if (spread !== undefined && spread > 0.15)
    reasons.push({
      towards: 'repair',
      source: PRACTICE,
      sentence:
        'Its winding is uneven over the turn: commutator and brushes first, and only then the winding.',
    });
  if (kind === 'brushed') {
    const left = value('motor', 'brushLength');
    const whole = value('motor', 'brushNew');
    if (left !== undefined && whole !== undefined) {
      const share = left / whole;
      if (share < 0.4)
        reasons.push({
          towards: 'repair',
          source: PRACTICE,
          sentence: `The shortest brush has ${percent(share)} of its length left: fit a new set of the same grade and bed it in. That is an hour’s work and no reason to give up the motor.`,
        });
      else
        reasons.push({
          towards: 'keep',
          source: PRACTICE,
          sentence: `Its brushes have ${percent(share)} of their length left.`,
        });
    } else if (left === undefined)
      reasons.push({
        towards: 'note',
        source: PRACTICE,
        sentence: 'Look at its brushes before you decide: brushes are cheap, a scored commutator is not.',
      });
    if (feedback === 'resolver')
      reasons.push({
        towards: 'keep',
        source: PRACTICE,
        sentence:
          'That a resolver sits on it does not matter: a brushed motor needs no rotor position, so any position feedback the drive or control reads will do in its place.',
      });
    if (feedback === 'tacho') {
      const loop = choice('drive', 'loop');
      if (loop === 'speed' && choices('drive', 'feedbacks')?.includes('tacho'))
        reasons.push({
          towards: 'keep',
          source: PRACTICE,
          sentence:
            'Its tacho is just what a drive with a speed loop wants; keep both. The control still needs an encoder or a scale for the position.',
        });
      else
        reasons.push({
          towards: 'note',
          source: PRACTICE,
          sentence:
            'A tacho tells speed only. Put an encoder in its place on the rear shaft, or keep the tacho for a drive with a speed loop and add the encoder elsewhere.',
        });
    }
  }
  if (kind === 'brushless') {
    const sensor = choice('feedback', 'commutation');
    const ways = choices('drive', 'commutations');
    if (feedback === 'resolver' || sensor === 'resolver') {
      if (ways?.includes('resolver'))
        reasons.push({
          towards: 'keep',
          source: PRACTICE,
          sentence:
            'It is brushless with a resolver, and the drive reads resolvers: the drive knows where the rotor stands, and they go together.',
        });
      else if (ways !== undefined)
        reasons.push({
          towards: 'repair',
          source: PRACTICE,
          sentence:
            'It is brushless, and its resolver also tells the drive where the rotor stands (commutation). This drive reads no resolver: it takes a drive that does, or an encoder with Hall or U V W tracks in place of the resolver, set to the poles of this motor.',
        });
      else
        reasons.push({
          towards: 'find-out',
          source: PRACTICE,
          sentence:
            'It is brushless with a resolver, and that does matter: the drive must read it, or an encoder with Hall or U V W tracks has to go on. Find out what the drive accepts.',
        });
    } else if (sensor === 'none' && ways !== undefined && !ways.includes('start-up'))
      reasons.push({
        towards: 'repair',
        source: PRACTICE,
        sentence:
          'Nothing tells the drive where the rotor of this brushless motor stands: it needs an encoder with Hall or U V W tracks.',
      });
    else if (sensor === undefined)
      reasons.push({
        towards: 'find-out',
        source: PRACTICE,
        sentence:
          'A brushless motor turns only if the drive knows where its rotor stands: find out what tells it.',
      });
  }
  return reasons;
}
