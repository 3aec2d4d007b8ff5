/** Faults that a year on a shelf brings, tried on the agent, with its books checked after each. */
@org.jspecify.annotations.NullMarked
package meltkeeper.endure;
