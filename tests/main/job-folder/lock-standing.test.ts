import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Here } from '../../../src/main/services/job-folder/lock/here.ts'
import type { LockHolder } from '../../../src/main/services/job-folder/lock/lock-holder.ts'
import { type Standing, standingOf } from '../../../src/main/services/job-folder/lock/standing-of.ts'
import type { ProcessLook } from '../../../src/main/services/machine/look-at-process.ts'
import { ENDED } from '../../../src/main/services/machine/process-start.ts'
import { MACHINES_OWN_NAMESPACE } from '../../../src/main/services/machine/this-boot.ts'

const CONTAINER = 'pid:[4026532177]'

const HERE: Here = {
  host: 'bench-1',
  machine: 'machine A',
  boot: 'boot 7',
  namespace: MACHINES_OWN_NAMESPACE,
  bootedAt: Date.parse('2026-03-01T06:00:00Z'),
  folder: '64769:1001',
}

const HOLDER: LockHolder = {
  token: '0123456789abcdef01234567',
  pid: 4711,
  host: 'bench-1',
  machine: 'machine A',
  boot: 'boot 7',
  namespace: MACHINES_OWN_NAMESPACE,
  user: 'rivet',
  start: 'boot 7:5000',
  since: '2026-03-01T08:00:00Z',
  folder: '64769:1001',
}

const NEITHER = { boot: undefined, namespace: undefined, machine: undefined, folder: undefined }

type Line = [
  what: string,
  holder: Partial<LockHolder>,
  here: Partial<Here>,
  process: ProcessLook,
  stands: Standing,
]

const THERE: ProcessLook = { start: 'boot 7:5000' }
const ANOTHER: ProcessLook = { start: 'boot 7:9000' }
const UNSEEN: ProcessLook = { start: undefined }

const SAME_BOOT: Line[] = [
  ['its process is there', {}, {}, THERE, 'at-work'],
  ['its process has ended', {}, {}, ENDED, 'process-ended'],
  ['its number is that of another process', {}, {}, ANOTHER, 'process-ended'],
  ['a process of its number is hidden from this one', {}, {}, UNSEEN, 'not-known'],
  ['it does not say when it was started', { start: undefined }, {}, THERE, 'not-known'],
  ['the host was renamed, its process is there', { host: 'old-name' }, {}, THERE, 'at-work'],
  ['the host was renamed, its process has ended', { host: 'old-name' }, {}, ENDED, 'process-ended'],
  ['it is in a container, and its number is free here', { namespace: CONTAINER }, {}, ENDED, 'not-known'],
  ['it is in a container, and its number is taken here', { namespace: CONTAINER }, {}, ANOTHER, 'not-known'],
  ['it is outside, and this is a container', {}, { namespace: CONTAINER }, ENDED, 'not-known'],
  ['both are in one container', { namespace: CONTAINER }, { namespace: CONTAINER }, ENDED, 'process-ended'],
  [
    'its container has another machine-id',
    { machine: 'image', namespace: CONTAINER },
    {},
    ENDED,
    'not-known',
  ],
  ['it does not say in which namespace', { namespace: undefined }, {}, ENDED, 'not-known'],
  ['it locked the folder that this is a copy of', { folder: '64769:2002' }, {}, THERE, 'other-folder'],
  ['the same from a container', { folder: '64769:2002', namespace: CONTAINER }, {}, ENDED, 'other-folder'],
  ['it does not say which folder', { folder: undefined }, {}, THERE, 'at-work'],
  ['the folder is on a share now', {}, { folder: undefined }, THERE, 'at-work'],
]

const OTHER_BOOT: Line[] = [
  ['the machine was started again', { boot: 'boot 6' }, {}, THERE, 'earlier-boot'],
  [
    'the same, on a share',
    { boot: 'boot 6', folder: undefined },
    { folder: undefined },
    THERE,
    'earlier-boot',
  ],
  ['started again and renamed', { boot: 'boot 6', host: 'old-name' }, {}, ENDED, 'earlier-boot'],
  [
    'renamed, or another set up from its disk, on a share',
    { boot: 'boot 6', host: 'old-name', folder: undefined },
    { folder: undefined },
    ENDED,
    'not-known',
  ],
  [
    'another set up from its disk, working here through a share',
    { boot: 'boot 6', host: 'bench-2', folder: undefined },
    {},
    ENDED,
    'not-known',
  ],
  ['another machine', { boot: 'boot 6', machine: 'machine B', host: 'bench-2' }, {}, ENDED, 'not-known'],
  ['another machine of the same name', { boot: 'boot 6', machine: 'machine B' }, {}, ENDED, 'not-known'],
  ['a machine without an identity', { boot: 'boot 6', machine: undefined }, {}, ENDED, 'not-known'],
  [
    'neither has an identity',
    { boot: 'boot 6', machine: undefined },
    { machine: undefined },
    ENDED,
    'not-known',
  ],
  ['a container of the same image', { boot: 'boot 6', namespace: CONTAINER }, {}, ENDED, 'not-known'],
  ['seen from a container', { boot: 'boot 6' }, { namespace: CONTAINER }, ENDED, 'not-known'],
  [
    'both in containers of one image',
    { boot: 'boot 6', namespace: CONTAINER },
    { namespace: CONTAINER },
    ENDED,
    'not-known',
  ],
]

const NO_BOOT: Line[] = [
  ['the same host, process ended', NEITHER, NEITHER, ENDED, 'process-ended'],
  ['the same host, a process of its number is there', NEITHER, NEITHER, UNSEEN, 'not-known'],
  ['another host', { ...NEITHER, host: 'bench-2' }, NEITHER, ENDED, 'not-known'],
  ['another identity', { ...NEITHER, machine: 'machine B' }, NEITHER, ENDED, 'not-known'],
  ['only this system counts boots', NEITHER, {}, ENDED, 'not-known'],
  ['only that system counts boots', {}, NEITHER, ENDED, 'not-known'],
]

describe.each([
  ['of the same boot', SAME_BOOT],
  ['of another boot', OTHER_BOOT],
  ['where boots are not known', NO_BOOT],
])('a lock %s', (_, lines) => {
  test.each(lines)('when %s', (_, holder, here, process, stands) => {
    expect(standingOf({ ...HOLDER, ...holder }, { ...HERE, ...here }, () => process)).toBe(stands)
  })
})

/** A place where a process may run. */
interface Place {
  /** Which machine it is, and how many times that was started before. */
  kernel: number
  starts: number
  /** 0: none, the machine itself. */
  container: number
  host: string
  machine: string | undefined
  boot: string
  namespace: string
}

/**
 * Places in an office where much goes wrong: a machine-id that came with a copied disk or an image, containers with a
 * boot of their own, namespaces of the same number on several machines, hosts of one name or renamed. What does not happen:
 * two machines with both machine-id and name the same, two namespaces of one number at once on one machine.
 */
const place: fc.Arbitrary<Place> = fc
  .record({
    kernel: fc.nat(2),
    starts: fc.nat(1),
    container: fc.nat(2),
    cloned: fc.boolean(),
    renamed: fc.boolean(),
    image: fc.constantFrom('image', undefined, 'machine 0'),
    ownBoot: fc.boolean(),
  })
  .map(({ kernel, starts, container, cloned, renamed, image, ownBoot }) => {
    const boot = `boot ${kernel}.${starts}`
    if (container === 0) {
      const machine = cloned ? 'machine 0' : `machine ${kernel}`
      const host = cloned ? `bench-${kernel}${renamed ? '-old' : ''}` : 'bench'
      return { kernel, starts, container, host, machine, boot, namespace: MACHINES_OWN_NAMESPACE }
    }
    return {
      kernel,
      starts,
      container,
      host: renamed ? 'bench-0' : 'drawing-office',
      machine: image,
      boot: ownBoot ? `${boot}.${container}` : boot,
      namespace: `pid:[${4026532000 + container}]`,
    }
  })

interface Office {
  locked: Place
  looks: Place
  /** Whether the holder is at work still, where its machine was not started again meanwhile. */
  lives: boolean
  /** The machine on whose disk the folder lies; others reach it by a share. undefined: it is on a share for all. */
  disk: number | undefined
  /** The same of the copy that is looked at, where it is one that the lock came along with. */
  copy: { disk: number | undefined } | undefined
  hidden: boolean
  /** What else may have the holder's number where it is looked for. */
  stranger: ProcessLook
}

const disk = fc.option(fc.nat(2), { nil: undefined })

const office: fc.Arbitrary<Office> = fc
  .record({
    locked: place,
    looks: fc.option(place, { nil: undefined }),
    lives: fc.boolean(),
    disk,
    copy: fc.option(fc.record({ disk }), { nil: undefined }),
    hidden: fc.boolean(),
    stranger: fc.constantFrom<ProcessLook>(ENDED, UNSEEN, { start: 'of a stranger' }),
  })
  .map(({ looks, ...rest }) => ({ ...rest, looks: looks ?? rest.locked }))

/** Whether the holder is alive in truth, and how its lock stands as far as can be seen. */
function seenFrom({ locked, looks, lives, disk, copy, hidden, stranger }: Office) {
  const sameKernel = locked.kernel === looks.kernel && locked.starts === looks.starts
  const alive = lives && (sameKernel || locked.kernel !== looks.kernel)
  const sameNumbers = sameKernel && locked.container === looks.container
  const holder: LockHolder = {
    ...HOLDER,
    host: locked.host,
    machine: locked.machine,
    boot: locked.boot,
    namespace: locked.namespace,
    start: 'of the holder',
    folder: disk === locked.kernel ? '64769:1' : undefined,
  }
  const { host, machine, boot, namespace } = looks
  const ownDisk = (copy === undefined ? disk : copy.disk) === looks.kernel
  const folder = ownDisk ? `64769:${copy === undefined ? 1 : 2}` : undefined
  const process = alive && sameNumbers ? { start: hidden ? undefined : 'of the holder' } : stranger
  const here: Here = { ...HERE, host, machine, boot, namespace, folder }
  return { alive, standing: standingOf(holder, here, () => process) }
}

const SO_IN_TRUTH: Record<Standing, (alive: boolean, copied: boolean) => boolean> = {
  'process-ended': (alive) => !alive,
  'earlier-boot': (alive, copied) => !alive || copied,
  'other-folder': (_, copied) => copied,
  'at-work': (alive) => alive,
  'not-known': () => true,
}

test('whatever runs where, nothing is said of a lock that is not so in truth: none is taken from one who is at work', () => {
  const said: Partial<Record<Standing, number>> = {}
  fc.assert(
    fc.property(office, (case_) => {
      const { alive, standing } = seenFrom(case_)
      said[standing] = (said[standing] ?? 0) + 1
      return SO_IN_TRUTH[standing](alive, case_.copy !== undefined)
    }),
    { numRuns: 20_000 },
  )
  expect(Object.keys(said).sort()).toEqual(Object.keys(SO_IN_TRUTH).sort())
  for (const count of Object.values(said)) expect(count).toBeGreaterThan(100)
})
