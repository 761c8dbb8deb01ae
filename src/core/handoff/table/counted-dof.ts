/** From so many degrees of freedom on the coverage factor is that of infinitely many within 0.2 %. */
const MOST_DOF = 1000

/** Degrees of freedom where they count; null where there are so many that it makes no difference. */
export const countedDof = (dof: number | null): number | null => (dof === null || dof > MOST_DOF ? null : dof)
