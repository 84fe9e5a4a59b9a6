Console.Error.WriteLine("The bench is not there yet.");
return 2;
