/** Tests of what calls for care. */
@org.jspecify.annotations.NullMarked
package meltkeeper.caution;
