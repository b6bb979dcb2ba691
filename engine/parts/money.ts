/** What a part costs, kept with it. Text in the currency the person types; no finding asks for it. */
import type { TextFact } from './types.ts';

const cost = (name: string, findOut: string): TextFact => ({
  kind: 'text',
  of: 'money',
  name,
  trouble: 2,
  findOut: `${findOut} Write it with its currency, as 120 EUR or as a range, 80–120 EUR; 0 for nothing.`,
});

export const money = {
  price: cost('price to get it', 'What is asked for it, with carriage. 0 where it is yours already.'),
  priceNew: cost('price of a new one like it', 'Ask two sellers for one that would do the same job.'),
  repairCost: cost(
    'cost of repairing it',
    'Brushes, bearings, regrinding, rewinding: ask for a price before you send it off.',
  ),
  adaptCost: cost(
    'cost of making it fit',
    'Adapter, plugs, another encoder with its coupling: what is needed besides to use it.',
  ),
} as const;
