/**
 * Each question and act of the shop, record in and record out: command line, API and metrics ask
 * here, so that their numbers cannot differ.
 */
@NullMarked
package meltkeeper.desk;

import org.jspecify.annotations.NullMarked;
