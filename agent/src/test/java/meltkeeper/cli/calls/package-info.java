/** Tests of the calls that need an outlook. */
@org.jspecify.annotations.NullMarked
package meltkeeper.cli.calls;
