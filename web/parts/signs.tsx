/** Open line symbols of the links of a chain; the motor is IEC 60617's circle M. Drawn by us. */
import type { ReactNode } from 'react';

const thread = [0, 1, 2, 3, 4, 5, 6].map((k) => (
  <line key={k} x1={10 + k * 7} y1="32" x2={15 + k * 7} y2="18" />
));

const SIGNS: Readonly<Record<string, ReactNode>> = {
  duty: <path d="M10 40h44M14 40c10 0 8-28 20-28s10 28 16 28" />,
  control: (
    <>
      <rect x="12" y="10" width="40" height="30" rx="3" />
      <path d="M18 32v-14h8v14h8v-14h8v14h4" />
    </>
  ),
  drive: <path d="M18 8v34l32-17z" />,
  motor: (
    <>
      <circle cx="32" cy="25" r="17" />
      <path d="M25 32v-14l7 9 7-9v14" />
    </>
  ),
  reduction: (
    <>
      <circle cx="22" cy="25" r="7" />
      <circle cx="44" cy="25" r="10" />
      <path d="M21 18L43 15M21 32L43 35" />
    </>
  ),
  screw: (
    <>
      <rect x="6" y="18" width="52" height="14" />
      {thread}
    </>
  ),
  slide: (
    <>
      <rect x="14" y="12" width="36" height="16" />
      <path d="M6 34h52M12 34l5-6M52 34l-5-6" />
    </>
  ),
  feedback: (
    <>
      <circle cx="32" cy="25" r="15" />
      <circle cx="32" cy="25" r="5" />
      <path d="M32 10v6M32 34v6M17 25h6M41 25h6M21 14l4 4M43 14l-4 4M21 36l4-4M43 36l-4-4" />
    </>
  ),
  brake: (
    <>
      <circle cx="28" cy="25" r="13" />
      <path d="M44 12v26M49 12v26M44 25h-3" />
    </>
  ),
  supply: (
    <>
      <circle cx="25" cy="25" r="11" />
      <circle cx="39" cy="25" r="11" />
    </>
  ),
  'spindle-duty': <path d="M12 36a20 20 0 1 1 40 0M32 36l9-13M16 26l3 1M32 16v3M48 26l-3 1" />,
  'spindle-drive': <path d="M18 8v34l32-17z" />,
  'spindle-motor': (
    <>
      <circle cx="32" cy="25" r="17" />
      <path d="M25 27v-12l7 8 7-8v12M25 35c3-4 4-4 7 0s4 4 7 0" />
    </>
  ),
  belts: (
    <>
      <circle cx="20" cy="25" r="7" />
      <circle cx="43" cy="25" r="13" />
      <circle cx="43" cy="25" r="7" />
      <path d="M19 18L41 12M19 32L41 38" />
    </>
  ),
  spindle: (
    <>
      <path d="M6 19h44l6 4v4l-6 4H6zM56 21h4v8h-4" />
      <path d="M13 13h9v6h-9zM13 31h9v6h-9zM38 13h9v6h-9zM38 31h9v6h-9z" />
    </>
  ),
  chuck: (
    <>
      <circle cx="32" cy="25" r="18" />
      <circle cx="32" cy="25" r="4" />
      <path d="M29 7v12h6V7M17.500 36.400l10.400-6-3-5.200-10.400 6M46.500 36.400l-10.400-6 3-5.200 10.400 6" />
    </>
  ),
  'spindle-feedback': (
    <>
      <circle cx="32" cy="25" r="15" />
      <circle cx="32" cy="25" r="5" />
      <path d="M32 10v6M32 34v6M17 25h6M41 25h6M21 14l4 4M43 14l-4 4M21 36l4-4M43 36l-4-4" />
    </>
  ),
  site: (
    <>
      <path d="M12 25c7-16 13-16 20 0s13 16 20 0" />
    </>
  ),
};

export function Sign({ place }: { place: string }) {
  return (
    <svg
      className="sign"
      viewBox="0 0 64 50"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.8"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      {SIGNS[place]}
    </svg>
  );
}
