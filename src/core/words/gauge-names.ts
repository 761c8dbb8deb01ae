/** What the tables of sheet gauges are called in a sentence. */
export const GAUGE_NAMES = {
  'us-standard-1893': 'US Standard Gauge of 1893',
  birmingham: 'Birmingham wire gauge',
  'imperial-1884': 'Imperial standard wire gauge of 1884',
}
