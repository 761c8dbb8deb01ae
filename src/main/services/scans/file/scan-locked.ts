import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'

/** A scan that can't be read without its password. */
export class ScanLocked extends ServiceError {
  override name = 'ScanLocked'
}

/** @param given whether a password was given, and is not the one */
export const scanLocked = (scan: string, given: boolean): ScanLocked =>
  new ScanLocked(reason(given ? 'scan.wrong-password' : 'scan.locked', { scan }))
