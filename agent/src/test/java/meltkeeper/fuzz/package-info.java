/**
 * What people and programs of the shop's network may hand over: whatever it is, it gets an answer.
 */
@org.jspecify.annotations.NullMarked
package meltkeeper.fuzz;
