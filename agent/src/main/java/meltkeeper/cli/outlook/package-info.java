/** Answers of the outlook desk as text for a shop owner, without the words of statistics. */
@NullMarked
package meltkeeper.cli.outlook;

import org.jspecify.annotations.NullMarked;
