/** Length of a vector. Math.hypot guards against overflow, which costs several times this and is not needed here. */
export const length2 = (x: number, y: number): number => Math.sqrt(x * x + y * y);
export const length3 = (x: number, y: number, z: number): number => Math.sqrt(x * x + y * y + z * z);
