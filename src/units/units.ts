/** How a job's lengths are typed and shown. SI is used everywhere else. */
export const UNITS = ['ft-in-16', 'ft-in-32', 'ft', 'm', 'mm'] as const;
export type Units = (typeof UNITS)[number];

/** The international foot, exact since 1959 (NIST Handbook 44, Appendix C). */
export const METRES_PER_FOOT = 0.3048;
export const METRES_PER_INCH = 0.0254;

/** Whether lengths are in metres or millimetres, not in feet or inches. */
export const isMetric = (units: Units): boolean => units === 'm' || units === 'mm';
