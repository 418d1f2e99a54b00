/** Of this app, as `package.json` has it; a test holds the two together. */
export const RELEASE = '0.1.0';
