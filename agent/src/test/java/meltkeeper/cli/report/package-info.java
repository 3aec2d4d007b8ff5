@org.jspecify.annotations.NullMarked
package meltkeeper.cli.report;
