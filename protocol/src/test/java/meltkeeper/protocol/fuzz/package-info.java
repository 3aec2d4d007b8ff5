/** Any bytes at all: none of them lets an exception escape or takes more than its share. */
@org.jspecify.annotations.NullMarked
package meltkeeper.protocol.fuzz;
