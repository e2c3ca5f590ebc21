/**
 * The few numeric agreements that everything else keeps.
 *
 * Lengths in a Design are quantized to 1e-7 m where they come in; comparisons against limits carry 1e-6 m;
 * what goes out is rounded to 1e-6 m, so that the last bits of differing math libraries never show.
 */

/** Slack that every comparison of a length against a limit carries, m. */
export const SLACK = 1e-6

/** `a` is at least `b`, within the slack. */
export const atLeast = (a: number, b: number): boolean => a >= b - SLACK

/** `a` is at most `b`, within the slack. */
export const atMost = (a: number, b: number): boolean => a <= b + SLACK

/** Rounds an input length to 1e-7 m; -0 becomes 0. */
export const quantize = (value: number): number => Math.round(value * 1e7) / 1e7 + 0

/** Rounds an output to 1e-6 (m, slope, or a part of a quaternion); -0 becomes 0. */
export const round6 = (value: number): number => Math.round(value * 1e6) / 1e6 + 0

/** Kilograms to whole grams: masses add as integers. */
export const grams = (kg: number): number => Math.round(kg * 1000)
