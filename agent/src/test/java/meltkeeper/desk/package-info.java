@org.jspecify.annotations.NullMarked
package meltkeeper.desk;
