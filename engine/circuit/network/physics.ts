/** Constants of nature that junctions need. */

/** kT/q at 27 °C in volts, from the exact constants of the SI (2019). */
export const THERMAL_VOLTS = (1.380649e-23 * 300.15) / 1.602176634e-19;

/** Conductance across every junction, in siemens: keeps a node between two blocking junctions determined. */
export const JUNCTION_LEAK = 1e-12;
