/**
 * How long a G-code file takes, and how hot each hot end is meanwhile, reckoned before it is
 * printed: moves with limited acceleration and speed at corners, waits for heat, dwells. Pure; its
 * memory is bounded by the look-ahead, however long the file is.
 *
 * <p>{@link meltkeeper.protocol.motion.JobEstimator} takes the lines, {@link
 * meltkeeper.protocol.motion.MotionLimits} is what a printer can do.
 */
@NullMarked
package meltkeeper.protocol.motion;

import org.jspecify.annotations.NullMarked;
