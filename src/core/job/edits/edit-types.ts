export type { Edit } from './edit-schema.ts'
