export type GaugeStandard = 'us-standard-1893' | 'birmingham'
