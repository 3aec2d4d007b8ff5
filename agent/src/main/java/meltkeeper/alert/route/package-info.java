/**
 * The ways to somebody: one class each, that hands one message over and says whether it was taken.
 * What is told, when, and how often is the business of those above.
 */
@NullMarked
package meltkeeper.alert.route;

import org.jspecify.annotations.NullMarked;
