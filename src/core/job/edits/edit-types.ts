export type { Edit } from '../model/edit-schema.ts'
