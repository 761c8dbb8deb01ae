import { userInfo } from 'node:os'

/** Who is at work when nobody is named. */
export function loginName(): string {
  try {
    return userInfo().username
  } catch {
    return 'somebody'
  }
}
