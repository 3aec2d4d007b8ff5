/** A {@link meltkeeper.desk.Report} as text, CSV, JSON and a page; and tables for people. */
@NullMarked
package meltkeeper.cli.report;

import org.jspecify.annotations.NullMarked;
