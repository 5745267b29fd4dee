# Writes the manual pages and the shells' completions that the program tells: -D program=... -D folder=...
function(tell file)
  execute_process(COMMAND ${program} ${ARGN} OUTPUT_FILE ${folder}/${file} COMMAND_ERROR_IS_FATAL ANY)
endfunction()

file(REMOVE_RECURSE ${folder})
file(MAKE_DIRECTORY ${folder}/man1)
foreach(shell bash zsh fish)
  tell(slabwright.${shell} --completion ${shell})
endforeach()
tell(man1/slabwright.1 --man)
# The page of the whole program names those of the commands.
file(STRINGS ${folder}/man1/slabwright.1 lines REGEX "^\\.BR slabwright..[a-z]+ \\(1\\)$")
foreach(line ${lines})
  string(REGEX REPLACE "^\\.BR slabwright..([a-z]+) .*" "\\1" command "${line}")
  tell(man1/slabwright-${command}.1 --man ${command})
endforeach()
file(TOUCH ${folder}/done)
