/** Shown in the app, on every printed page and in every export. */
export const STANDING_CAUTIONS: readonly string[] = [
  'Values scaled from a print are estimates. Figured dimensions govern over scaled ones.',
  'Parts that hold pressure, carry loads, brake, lift or conduct current must be designed and approved by qualified people under the rules in force.',
  'Old assemblies may hold lead paint, asbestos packing, mercury or live wiring: find out before you open or cut them.',
]
