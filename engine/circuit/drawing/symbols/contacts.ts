/** Contacts: what closes, what opens, and what works them. */
import type { SymbolSpec } from './types.ts';
import { circle, dashed, path, solid } from './types.ts';

const MAKE = 'M0 0H11L29 -10M29 0H40';
const BREAK = 'M0 0H11L31 -7M28 -9V0H40';

const contact = (name: string, d: string, more: SymbolSpec['draw'] = () => []): SymbolSpec => ({
  name,
  form: 'pole',
  linked: true,
  draw: () => [path(d), ...more()],
});

/** Opens directly: the movement itself parts the contact, whatever a spring does. */
const DIRECT = () =>
  path('M12 9H26M23 7L26 9L23 11M15.500 9a3.800 3.800 0 1 0 7.600 0a3.800 3.800 0 1 0 -7.600 0');

export const contacts = {
  'contact-make': contact('contact that closes', MAKE),
  'contact-break': contact('contact that opens', BREAK),
  'contact-main': contact('main contact of a contactor', MAKE, () => [path('M29 -4a4 4 0 0 1 0 8')]),
  'contact-delayed': contact('contact that works late', MAKE, () => [
    path('M18 -5V-13M21 -6V-13M14.500 -13a5 5 0 0 1 10 0'),
  ]),
  isolator: contact('main switch', MAKE, () => [path('M29 -4V4')]),
  button: contact('button worked by hand, closes', MAKE, () => [
    dashed('M20 -5V-14'),
    path('M14 -12V-14H26V-12'),
  ]),
  'button-break': contact('button worked by hand, opens', BREAK, () => [
    dashed('M20 -4V-14'),
    path('M14 -12V-14H26V-12'),
  ]),
  mushroom: contact('emergency stop button: opens directly (arrow in a circle) and stays open', BREAK, () => [
    dashed('M20 -4V-12'),
    path('M13 -12a7 5 0 0 1 14 0Z'),
    DIRECT(),
  ]),
  'contact-mirror': contact(
    'mirror contact: it opens, and stays open while a main contact is stuck',
    BREAK,
    () => [solid('M17.500 8a2.500 2.500 0 1 0 5 0a2.500 2.500 0 1 0 -5 0')],
  ),
  'limit-switch': contact('switch worked by something that passes, closes', MAKE, () => [
    path('M16 -3L22 -6V-11Z'),
  ]),
  'limit-switch-break': contact('switch worked by something that passes, opens', BREAK, () => [
    path('M16 -2L22 -4V-10Z'),
  ]),
  'pressure-switch': contact('switch worked by pressure, level or heat', MAKE, () => [
    dashed('M20 -5V-9'),
    circle(20, -12, 3),
  ]),
} as const satisfies Record<string, SymbolSpec>;
