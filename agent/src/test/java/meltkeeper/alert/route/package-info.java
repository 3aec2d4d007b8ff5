/** Tests of the way from the outbox to whoever is called. */
@org.jspecify.annotations.NullMarked
package meltkeeper.alert.route;
