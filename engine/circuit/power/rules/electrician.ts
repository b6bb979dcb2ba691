/** What is for a licensed electrician, always; and what the country asks. */
import { andList } from '../../../quantity/words.ts';
import type { WiringFinding } from '../../wiring/types.ts';
import type { PowerContext } from '../context.ts';
import { countryOf } from '../countries/index.ts';
import { finding } from '../say.ts';
import type { SupplyRule } from './rule.ts';

const ALWAYS =
  'The fixed mains connection or a new circuit, a three-phase supply or converter, the type of the residual current device, the main earthing, the measured fault current, any voltage test, a damaged main switch, a building without protective earth, and any machine that employees or pupils use or that is sold';

/** Never more than 'unknown': nobody is told by a program that their mains are in order. */
export const electricianRule: SupplyRule = {
  id: 'electrician',
  of: 'whole',
  needs: 'nothing',
  judge: (context) => ({ findings: electrician(context) }),
};

function electrician(context: PowerContext): readonly WiringFinding[] {
  const { settings } = context;
  const country = countryOf(settings.country);
  const made = [
    finding(
      'electrician',
      ['mains'],
      'What is for a licensed electrician',
      'unknown',
      `${ALWAYS}: these are for a licensed electrician under your local code, whatever Fettle works out.${country ? ` ${country.name}: ${country.fixed.says}` : ''}`,
      country ? country.fixed.source : 'IEC 60364; local codes go before it',
      country
        ? { remedy: `Ask ${country.ask}.` }
        : { needs: ['settings.country'], remedy: 'Ask a licensed electrician.' },
    ),
  ];
  if (settings.country.trim() === '') return made;
  if (!country)
    return [
      ...made,
      finding(
        'country',
        ['mains'],
        'Rules of the country',
        'unknown',
        `Fettle does not know the rules of “${settings.country.slice(0, 40)}”. Voltages, colours, sockets and who may work on them are to be asked there.`,
        'local codes',
        {
          remedy: 'Ask a licensed electrician, or whoever publishes the wiring rules there.',
        },
      ),
    ];
  const rules = [country.fixed, country.socket, country.machine];
  made.push(
    finding(
      'country',
      ['mains'],
      `Rules of ${country.name}`,
      'unknown',
      `${country.socket.says} ${country.machine.says} These are recalled, not read: check them.`,
      andList(rules.map(({ source }) => source)),
      {
        remedy: `Ask ${country.ask}.`,
      },
    ),
  );
  const mains = context.flow.sources.find(({ kind }) => kind === 'mains');
  const typed = mains?.volts;
  if (typed !== undefined) {
    const near = [country.mains.single, country.mains.between].some(
      (volts) => Math.abs(typed / volts - 1) < 0.1,
    );
    if (!near)
      made.push(
        finding(
          'country-mains',
          [mains!.device],
          'Mains voltage',
          'fails',
          `The mains are said to have ${Math.round(typed)} V; in ${country.name} there are ${country.mains.single} V to neutral and ${country.mains.between} V between phases.`,
          country.mains.source,
          {
            remedy: 'Look at the plate of the transformer and at the board again, or correct the country.',
          },
        ),
      );
  }
  return made;
}
